using System.Globalization;
using System.Text;

namespace Fairlead.Records;

/// <summary>A whole log as one text file: a line of canonical JSON for each entry, and a seal with their number and Merkle root. Every byte of it
/// counts: a file that differs in one is not the log.</summary>
public static class LogFile
{
    /// <summary>The file of a log.</summary>
    /// <param name="lines">The lines of the log, in order.</param>
    public static byte[] Write(IEnumerable<string> lines)
    {
        ArgumentNullException.ThrowIfNull(lines);
        var (text, tree) = (new StringBuilder(), new MerkleTree());
        foreach (var line in lines)
        {
            text.Append(line).Append('\n');
            tree.Add(CanonicalJson.Bytes(line));
        }

        return CanonicalJson.Bytes(text.Append(Seal(new Witness(tree.Count, Convert.ToHexStringLower(tree.Root())))).Append('\n').ToString());
    }

    /// <summary>Checks a file and reads its entries.</summary>
    /// <param name="file">The bytes.</param>
    /// <param name="witness">What somebody knew of the log; null when nobody did.</param>
    public static ChainReport Read(ReadOnlySpan<byte> file, Witness? witness = null)
    {
        string[] lines;
        try
        {
            lines = CanonicalJson.FromBytes(file).Split('\n');
        }
        catch (FormatException)
        {
            return Upto(file, witness);
        }

        if (lines.Length < 2 || lines[^1].Length > 0)
        {
            var broken = ChainCheck.Check(lines, witness);
            return broken with { Fault = broken.Fault ?? new ChainFault(broken.Head.Entries + 1, "the file ends without its seal: the end was cut off") };
        }

        var report = ChainCheck.Check(lines[..^2], witness);
        return report.Fault is not null || lines[^2] == Seal(report.Head) ? report
            : report with { Fault = new ChainFault(report.Head.Entries + 1, "the seal is not that of the entries before it: it was altered, or entries were cut off") };
    }

    // Bytes that are no text: what stands on the lines before them is still told.
    private static ChainReport Upto(ReadOnlySpan<byte> file, Witness? witness)
    {
        var good = new List<string>();
        foreach (var range in file.Split((byte)'\n'))
        {
            try
            {
                good.Add(CanonicalJson.FromBytes(file[range]));
            }
            catch (FormatException)
            {
                break;
            }
        }

        var report = ChainCheck.Check(good, witness: null);
        return report with { Fault = report.Fault ?? new ChainFault(report.Head.Entries + 1, "it holds bytes that are no text") };
    }

    private static string Seal(Witness head) => string.Create(CultureInfo.InvariantCulture, $"{{\"entries\":{head.Entries},\"root\":\"{head.Root}\"}}");
}
