using BenchmarkDotNet.Running;
using Fairlead.Bench;

if (args is ["ratios", ..])
{
    Ratios.Print(Console.Out);
    return 0;
}

BenchmarkSwitcher.FromAssembly(typeof(AssessmentBench).Assembly).Run(args);
return 0;
