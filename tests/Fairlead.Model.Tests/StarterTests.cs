using Fairlead.Model.Reading;
using Fairlead.Model.Storage;

namespace Fairlead.Tests.Model;

public sealed class StarterTests
{
    [Fact]
    public void The_starter_job_reads_clean()
    {
        var result = JobReader.Read(Starter.Files());
        Assert.Empty(result.Problems.Select(p => p.ToString()));
        Assert.NotNull(result.Job);
    }
}
