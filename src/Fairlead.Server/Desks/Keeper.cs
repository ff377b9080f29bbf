using System.Security.Cryptography;
using System.Text;
using Fairlead.Model.Reading;
using Fairlead.Model.Storage;
using Fairlead.Records;
using Fairlead.Server.Jobs;
using Fairlead.Workbench;

namespace Fairlead.Server.Desks;

/// <summary>A file that somebody else changed since it was opened here.</summary>
/// <param name="File">The file.</param>
/// <param name="From">The text it was opened with.</param>
/// <param name="Theirs">The text that stands there now.</param>
/// <param name="Yours">The text that was to be kept.</param>
/// <param name="TheirHash">SHA-256 of theirs: named when theirs, having been seen, is to be replaced.</param>
/// <param name="By">Who kept theirs, and when and why; empty when the log does not know.</param>
public sealed record Clash(string File, string From, string Theirs, string Yours, string TheirHash, string By);

/// <summary>A file that somebody else changed since it was opened here, said before it comes to a clash.</summary>
/// <param name="File">The file.</param>
/// <param name="By">Who kept theirs, and when and why; empty when the log does not know.</param>
/// <param name="Edited">Whether it was edited here too.</param>
public sealed record OthersChange(string File, string By, bool Edited);

/// <summary>Why edits were not kept.</summary>
/// <param name="Reasons">Sentences for the person.</param>
/// <param name="Clashes">Files others changed meanwhile.</param>
public sealed record NotKept(IReadOnlyList<string> Reasons, IReadOnlyList<Clash> Clashes);

/// <summary>Keeps edits: each changed file becomes a revision in the log, and the file in the folder is replaced. What somebody else changed
/// meanwhile is shown with both versions and never overwritten unseen.</summary>
/// <param name="clock">The clock.</param>
internal sealed class Keeper(TimeProvider clock)
{
    private readonly Lock one = new();

    public IResult Keep(OpenDesk open, Desk desk, KeepRequest keep)
    {
        lock (one)
        {
            var clashes = Clashes(open, desk, keep.Over).ToArray();
            if (clashes.Length > 0)
            {
                return TypedResults.Json(new NotKept(["Somebody else changed what you edited. Look at both before one replaces the other."], clashes), statusCode: StatusCodes.Status409Conflict);
            }

            var reasons = Revise(open, desk, keep);
            if (reasons.Count > 0)
            {
                return TypedResults.Json(new NotKept(reasons, []), statusCode: StatusCodes.Status422UnprocessableEntity);
            }

            open.Keep(desk);
            return TypedResults.Ok(desk.View);
        }
    }

    /// <summary>What others have changed meanwhile. Cheap enough to be asked every few seconds.</summary>
    public static IEnumerable<OthersChange> Others(OpenDesk open, Desk desk)
    {
        var edited = desk.Edited;
        foreach (var (file, from) in open.From)
        {
            var theirs = Standing(open.Folder, file);
            if (theirs != from && theirs != desk.Texts.Files.GetValueOrDefault(file))
            {
                yield return new OthersChange(file, By(open.Folder, file), edited.Contains(file));
            }
        }
    }

    private IReadOnlyList<string> Revise(OpenDesk open, Desk desk, KeepRequest keep)
    {
        // A job whose text has problems is kept too, so that nothing typed is lost; who may sign is then read from what stood there before.
        var job = JobReader.Read(desk.Texts.ToFiles()).Job ?? JobFolder.Load(open.Folder).Job;
        if (job is null)
        {
            return ["Neither the text as it stands nor the one kept before can be read, so it is not known who works on this job. Mend the text first."];
        }

        using var store = JobStore.OpenLog(open.Folder);
        var book = new LogBook(store, Register.Of(job), clock);
        foreach (var file in desk.Edited)
        {
            var state = book.CatchUp();
            var revision = state.Story("document/" + file).Count(e => e.Kind == "revised");
            var outcome = book.Revise(keep.Who, file, revision, Encoding.UTF8.GetBytes(desk.Texts.Files[file]), keep.Why);
            if (outcome.Entry is null)
            {
                return outcome.Refused;
            }

            SafeWrite.Bytes(Path.Combine(open.Folder, file), Encoding.UTF8.GetBytes(desk.Texts.Files[file]));
        }

        return [];
    }

    private static IEnumerable<Clash> Clashes(OpenDesk open, Desk desk, IReadOnlyDictionary<string, string>? over)
    {
        foreach (var file in desk.Edited)
        {
            var theirs = Standing(open.Folder, file);
            var (from, yours) = (open.From.GetValueOrDefault(file, ""), desk.Texts.Files[file]);
            var hash = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(theirs)));
            if (theirs != from && theirs != yours && over?.GetValueOrDefault(file) != hash)
            {
                yield return new Clash(file, from, theirs, yours, hash, By(open.Folder, file));
            }
        }
    }

    // As the desk reads it: a mark at the beginning is a part of the text.
    private static string Standing(string folder, string file) => Path.Combine(folder, file) is var path && File.Exists(path) ? Encoding.UTF8.GetString(File.ReadAllBytes(path)) : "";

    private static string By(string folder, string file)
    {
        using var store = JobStore.OpenLog(folder);
        var last = ChainCheck.Check(store.Lines(0)).Entries.LastOrDefault(e => e.Kind == "revised" && e.Subject == "document/" + file);
        return last is null ? "" : $"{last.Who}, {Instant.Text(last.At)}: {last.Payload.Text("why")}";
    }
}
