using Fairlead.Tests.Records;
using Xunit.MicrosoftTestingPlatform;
using Xunit.Runner.InProc.SystemConsole;

// Run as 'append', it is the child that the tests of sudden death kill; else it runs the tests.
return args switch
{
    ["append", var place] => Appender.Run(place),
    _ when args.Contains("--server") || args.Contains("--internal-msbuild-node") => await TestPlatformTestFramework.RunAsync(args, Fairlead.Records.Tests.SelfRegisteredExtensions.AddSelfRegisteredExtensions),
    _ => await ConsoleRunner.Run(args),
};
