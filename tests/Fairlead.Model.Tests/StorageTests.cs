using System.IO.Compression;
using System.Text;
using CsCheck;
using Fairlead.Model;
using Fairlead.Model.Reading;
using Fairlead.Model.Storage;

namespace Fairlead.Tests.Model;

/// <summary>Jobs in folders and zip files: whole or not at all, and nothing that was there is lost.</summary>
public sealed class StorageTests : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("fairlead-test-");

    public void Dispose() => folder.Delete(recursive: true);

    private string At(string name) => Path.Combine(folder.FullName, name);

    private static SortedDictionary<string, string> Contents(string directory)
    {
        var files = new FolderFiles(directory);
        return new(files.All.ToDictionary(f => f, f => Convert.ToHexString(files.Read(f))), StringComparer.Ordinal);
    }

    private string Zipped(params (string Name, byte[] Bytes)[] entries)
    {
        var path = At("hostile.zip");
        using var zip = ZipFile.Open(path, ZipArchiveMode.Create);
        foreach (var (name, bytes) in entries)
        {
            using var stream = zip.CreateEntry(name).Open();
            stream.Write(bytes);
        }

        return path;
    }

    [Fact]
    public void Export_and_import_give_back_every_byte()
    {
        Starter.Write(At("job"));
        Directory.CreateDirectory(At("job/data/drawings"));
        File.WriteAllBytes(At("job/data/drawings/Größe 1.pdf"), [.. Enumerable.Range(0, 256).Select(i => (byte)i)]);
        File.WriteAllBytes(At("job/data/empty.txt"), []);
        JobFolder.Export(At("job"), At("job.zip"));
        JobFolder.Import(At("job.zip"), At("back"));
        Assert.Equal(Contents(At("job")), Contents(At("back")));
        Assert.Equal(JobFolder.Load(At("job")).Hash, JobFolder.Load(At("back")).Hash);
        Assert.Equal(["back", "job", "job.zip"], folder.EnumerateFileSystemInfos().Select(f => f.Name).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void The_same_files_make_the_same_zip_whenever_and_wherever_they_were_written()
    {
        Starter.Write(At("one"));
        Starter.Write(At("two"));
        File.SetLastWriteTimeUtc(At("two/job.yaml"), new DateTime(2001, 2, 3, 4, 5, 6, DateTimeKind.Utc));
        Assert.Equal(JobFolder.Zip(new FolderFiles(At("one"))), JobFolder.Zip(new FolderFiles(At("two"))));
        Assert.Equal(JobFolder.Zip(new FolderFiles(At("one"))), JobFolder.Zip(Starter.Files()));
    }

    [Fact]
    public void A_device_is_written_to_and_not_replaced_by_a_file()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "devices with names in the file system");
        SafeWrite.Bytes("/dev/null", [1, 2, 3]);
        Assert.Equal(0, new FileInfo("/dev/null").Length);
        Assert.Throws<IOException>(() => SafeWrite.Bytes("/dev/full", [1, 2, 3]));
        Assert.Equal(0, new FileInfo("/dev/full").Length);
    }

    [Fact]
    public void The_starter_is_written_into_a_new_or_empty_folder_only()
    {
        Directory.CreateDirectory(At("empty"));
        Starter.Write(At("empty"));
        Assert.NotNull(JobFolder.Load(At("empty")).Job);
        Directory.CreateDirectory(At("used"));
        File.WriteAllText(At("used/note.txt"), "mine");
        Assert.Throws<IOException>(() => Starter.Write(At("used")));
        Assert.Equal([At("used/note.txt")], Directory.EnumerateFileSystemEntries(At("used")));
        File.WriteAllText(At("file"), "mine");
        Assert.Throws<IOException>(() => Starter.Write(At("file")));
        Assert.Equal("mine", File.ReadAllText(At("file")));
    }

    [Fact]
    public void Files_that_bear_a_temporary_name_are_left_alone()
    {
        foreach (var name in new[] { "job.zip.writing", "job.zip.writing1", "back.writing", "back.writing1" })
        {
            File.WriteAllText(At(name), name);
        }

        Directory.CreateDirectory(At("back.writing2"));
        File.WriteAllText(At("back.writing2/mine"), "mine");
        Starter.Write(At("job"));
        JobFolder.Export(At("job"), At("job.zip"));
        JobFolder.Import(At("job.zip"), At("back"));
        Assert.Equal(Contents(At("job")), Contents(At("back")));
        Assert.Equal("mine", File.ReadAllText(At("back.writing2/mine")));
        Assert.All(["job.zip.writing", "job.zip.writing1", "back.writing", "back.writing1"], name => Assert.Equal(name, File.ReadAllText(At(name))));
    }

    [Fact]
    public void A_file_named_like_a_temporary_one_comes_through_whole()
    {
        var zip = Zipped(("a.yaml.writing", [1]), ("a.yaml.writing1", [2]), ("a.yaml", [3]));
        JobFolder.Import(zip, At("back"));
        Assert.All(new (string Name, byte Holds)[] { ("a.yaml", 3), ("a.yaml.writing", 1), ("a.yaml.writing1", 2) }, f => Assert.Equal(f.Holds, Assert.Single(File.ReadAllBytes(Path.Combine(At("back"), f.Name)))));
    }

    [Theory]
    [InlineData("../outside.yaml")]
    [InlineData("a/../../outside.yaml")]
    [InlineData("/outside.yaml")]
    [InlineData("..\\outside.yaml")]
    [InlineData("C:/outside.yaml")]
    [InlineData("a//b.yaml")]
    [InlineData("./job.yaml")]
    [InlineData(".git/config")]
    [InlineData("a/.. /b.yaml")]
    [InlineData("job.yaml.")]
    [InlineData("nul.yaml")]
    [InlineData("parts/COM1")]
    [InlineData("a\u0001b.yaml")]
    [InlineData("a\0b.yaml")]
    [InlineData("what?.yaml")]
    public void A_zip_that_names_a_file_outside_or_unfit_for_the_folder_is_refused_whole(string name)
    {
        var zip = Zipped(("job.yaml", [1]), (name, [2]));
        Assert.Throws<InvalidDataException>(() => JobFolder.Import(zip, At("in/back")));
        Assert.Equal(["hostile.zip"], folder.EnumerateFileSystemInfos().Select(f => f.Name));
    }

    [Theory]
    [InlineData("job.yaml", "job.yaml")]
    [InlineData("job.yaml", "Job.yaml")]
    [InlineData("parts", "parts/a.yaml")]
    [InlineData("Parts", "parts/a.yaml")]
    public void A_zip_whose_files_cannot_stand_together_is_refused_whole(string one, string other)
    {
        var zip = Zipped((one, [1]), (other, [2]));
        Assert.Throws<InvalidDataException>(() => JobFolder.Import(zip, At("back")));
        Assert.Equal(["hostile.zip"], folder.EnumerateFileSystemInfos().Select(f => f.Name));
    }

    [Fact]
    public void A_zip_that_unpacks_to_more_than_a_job_may_hold_is_refused()
    {
        var zip = Zipped(("a.yaml", new byte[Limits.TotalBytes / 2]), ("b.yaml", new byte[(Limits.TotalBytes / 2) + 1]));
        Assert.True(new FileInfo(zip).Length < 1_000_000);
        Assert.Throws<InvalidDataException>(() => JobFolder.Import(zip, At("back")));
        Assert.False(Directory.Exists(At("back")));
    }

    [Fact]
    public void A_zip_of_too_many_files_is_refused()
    {
        var zip = Zipped([.. Enumerable.Range(0, Limits.Files + 1).Select(i => ($"{i}.txt", Array.Empty<byte>()))]);
        Assert.Throws<InvalidDataException>(() => JobFolder.Import(zip, At("back")));
    }

    [Fact]
    public void Import_into_a_folder_that_holds_anything_is_refused()
    {
        Starter.Write(At("job"));
        JobFolder.Export(At("job"), At("job.zip"));
        File.WriteAllText(At("job/job.yaml"), "mine");
        Assert.Throws<IOException>(() => JobFolder.Import(At("job.zip"), At("job")));
        Assert.Equal("mine", File.ReadAllText(At("job/job.yaml")));
    }

    [Fact]
    public void A_zip_changed_or_cut_anywhere_is_refused_or_gives_the_same_contents()
    {
        var good = JobFolder.Zip(Starter.Files());
        var contents = Starter.Files().All.Select(f => Convert.ToHexString(Starter.Files().Read(f))).Order(StringComparer.Ordinal).ToArray();
        var n = 0;
        Gen.Select(Gen.Int[0, good.Length - 1], Gen.Byte[1, 255], Gen.Bool).Sample(
            (at, flip, cut) =>
            {
                var bytes = cut ? good[..at] : [.. good];
                if (!cut)
                {
                    bytes[at] ^= flip;
                }

                var (zip, back) = (At($"bad{n}.zip"), At($"bad{n++}"));
                File.WriteAllBytes(zip, bytes);
                try
                {
                    JobFolder.Import(zip, back);
                }
                catch (InvalidDataException)
                {
                    return !Path.Exists(back);
                }

                return Contents(back).Values.Order(StringComparer.Ordinal).SequenceEqual(contents);
            },
            iter: 300, seed: "0N0XIzNsQ0O2", threads: 1);
    }

    [Fact]
    public void Links_and_hidden_files_are_no_part_of_a_job()
    {
        Starter.Write(At("job"));
        File.WriteAllText(At("secret.yaml"), "secret");
        File.CreateSymbolicLink(At("job/parts/link.yaml"), At("secret.yaml"));
        Directory.CreateSymbolicLink(At("job/loop"), At("job"));
        Directory.CreateDirectory(At("job/.git"));
        File.WriteAllText(At("job/.git/config"), "hidden");
        Assert.Equal(Starter.Files().All, new FolderFiles(At("job")).All);
        Assert.NotNull(JobFolder.Load(At("job")).Job);
    }

    [Fact]
    public void A_pipe_in_the_folder_is_an_empty_file_and_keeps_nobody_waiting()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "folders hold no pipes there");
        Starter.Write(At("job"));
        File.Delete(At("job/change.yaml"));
        using (var make = System.Diagnostics.Process.Start("mkfifo", At("job/change.yaml")))
        {
            make.WaitForExit();
        }

        Assert.Equal(["change.yaml:1:1: the file is empty"], Jobs.Lines(JobFolder.Load(At("job"))));
    }

    [Fact]
    public void A_folder_larger_than_a_job_may_be_is_not_exported()
    {
        Starter.Write(At("job"));
        using (var large = File.Create(At("job/film.mp4")))
        {
            large.SetLength(Limits.TotalBytes * 100);
        }

        Assert.NotNull(JobFolder.Load(At("job")).Job);
        Assert.Throws<InvalidDataException>(() => JobFolder.Export(At("job"), At("job.zip")));
        Assert.False(File.Exists(At("job.zip")));
    }

    [Fact]
    public void A_folder_that_no_zip_could_bring_back_is_not_exported()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "such names cannot be made there");
        Starter.Write(At("job"));
        File.WriteAllText(At("job/JOB.yaml"), "other");
        Assert.Throws<InvalidDataException>(() => JobFolder.Export(At("job"), At("job.zip")));
        File.Move(At("job/JOB.yaml"), At("job/a\\b.yaml"));
        Assert.NotNull(JobFolder.Load(At("job")).Job);
        Assert.Throws<InvalidDataException>(() => JobFolder.Export(At("job"), At("job.zip")));
        Assert.False(File.Exists(At("job.zip")));
    }

    [Fact]
    public void The_hash_follows_every_byte_and_every_name()
    {
        var files = Jobs.Starting();
        var first = Jobs.Load(files).Hash;
        Assert.Equal(first, JobReader.Read(new Shuffled(files)).Hash);
        foreach (var (name, bytes) in Jobs.Starting())
        {
            for (var i = 0; i < bytes.Length; i += 997)
            {
                var changed = bytes.ToArray();
                changed[i] ^= 1;
                Assert.NotEqual(first, Jobs.With(name, changed).Hash);
            }
        }

        files["parts/wires.yaml"] = files["parts/wiring.yaml"];
        files.Remove("parts/wiring.yaml");
        Assert.NotNull(Jobs.Load(files).Job);
        Assert.NotEqual(first, Jobs.Load(files).Hash);
    }

    [Fact]
    public void Moving_text_from_one_file_to_the_next_changes_the_hash()
    {
        var files = Jobs.Starting();
        (files["parts/a.yaml"], files["parts/b.yaml"]) = ("ab"u8.ToArray(), "c"u8.ToArray());
        var first = Jobs.Load(files).Hash;
        (files["parts/a.yaml"], files["parts/b.yaml"]) = ("a"u8.ToArray(), "bc"u8.ToArray());
        Assert.NotEqual(first, Jobs.Load(files).Hash);
    }

    [Fact]
    public void The_checksum_of_zip_files_has_its_published_check_value() => Assert.Equal(0xCBF43926, Crc32.Of(Encoding.ASCII.GetBytes("123456789")));

    /// <summary>Lists the files as some systems do: in no order.</summary>
    private sealed class Shuffled(SortedDictionary<string, byte[]> files) : IJobFiles
    {
        public IReadOnlyList<string> All => [.. files.Keys.Reverse()];

        public long Size(string path) => files[path].Length;

        public byte[] Read(string path) => files[path];
    }
}
