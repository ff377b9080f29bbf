using CsCheck;
using Fairlead.Documents;
using Fairlead.Drawings;

namespace Fairlead.Tests.Documents;

public sealed class TypesettingTests
{
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Every_sign_of_the_trade_has_a_glyph(bool bold)
    {
        const string signs = "ΩΔ√≤≥·²³µμ°−–—×±≈≠→½½ρσθφαβπηλ∑…★";
        Assert.Equal(signs, string.Concat(Typesetting.Runs(signs, bold).Select(r => r.Text)));
    }

    [Fact]
    public void A_sign_the_main_typeface_lacks_comes_from_the_wide_one() =>
        Assert.Equal([new Run("a ", Face.Regular), new Run("★", Face.Wide), new Run(" b", Face.Regular)], Typesetting.Runs("a ★ b", bold: false));

    [Fact]
    public void What_no_typeface_has_is_shown_as_missing_and_a_control_character_as_a_blank() =>
        Assert.Equal("x\uFFFD y", string.Concat(Typesetting.Runs("x\U0001F6E9\u0007y", bold: false).Select(r => r.Text)));

    [Fact]
    public void Digits_are_of_equal_width_so_that_columns_of_numbers_line_up() =>
        Assert.All([false, true], bold => Assert.Single("0123456789".Select(d => Typesetting.Width(d.ToString(), 1000, bold)).Distinct()));

    // The drawings measure without a font, from a table of widths: the font itself is the second method.
    [Fact]
    public void Drawings_measure_text_as_the_font_does() =>
        Gen.Select(Gen.String[Gen.Char[' ', '~'], 1, 40], Gen.Bool).Sample((text, bold) =>
            Assert.Equal(Typesetting.Width(text, 3, bold), TextMeasure.Width(text, 3, bold), 2e-3 * text.Length));

    [Fact]
    public void Wrapped_text_loses_no_word_and_fits() =>
        Gen.Select(Gen.String[Gen.Char['a', 'z'], 1, 12].Array[1, 30], Gen.Double[12, 60]).Sample((words, width) =>
        {
            var lines = TextWrap.Lines(string.Join(' ', words), 3, bold: false, width);
            Assert.All(lines, l => Assert.True(Typesetting.Width(l, 3, bold: false) <= width || l.Length == 1));
            Assert.Equal(string.Concat(words), string.Concat(lines).Replace(" ", "", StringComparison.Ordinal));
        });
}
