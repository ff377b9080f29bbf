using Fairlead.Drawings;

namespace Fairlead.Tests.Documents;

/// <summary>Asserts that the texts of a picture can be read.</summary>
internal static class Clear
{
    /// <summary>No text covers another, and none leaves the paper.</summary>
    public static void Assert(Picture picture, string name = "")
    {
        var boxes = picture.Shapes.OfType<Text>().Where(t => t.Words.Length > 0).Select(t => (t.Words, Box: BoxOf(t))).ToArray();
        Xunit.Assert.All(boxes, b => Xunit.Assert.True(
            b.Box.Left >= 0 && b.Box.Right <= picture.Width && b.Box.Top >= 0 && b.Box.Bottom <= picture.Height, $"{name}: '{b.Words}' leaves the paper"));
        for (var i = 0; i < boxes.Length; i++)
        {
            for (var j = i + 1; j < boxes.Length; j++)
            {
                var (a, b) = (boxes[i].Box, boxes[j].Box);
                Xunit.Assert.False(
                    a.Left < b.Right && b.Left < a.Right && a.Top < b.Bottom && b.Top < a.Bottom, $"{name}: '{boxes[i].Words}' and '{boxes[j].Words}' overlap");
            }
        }
    }

    /// <summary>What a text covers.</summary>
    public static Box BoxOf(Text t)
    {
        Xunit.Assert.Equal(0, t.Angle);
        var width = TextMeasure.Width(t.Words, t.Size, t.Bold);
        var left = t.At.X - (t.Anchor switch { Anchor.End => width, Anchor.Middle => width / 2, _ => 0 });
        return new Box(left, t.At.Y - (t.Size * TextMeasure.CapHeight), left + width, t.At.Y);
    }
}
