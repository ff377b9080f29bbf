using BenchmarkDotNet.Running;
using Fairlead.Bench;

switch (args)
{
    case ["ratios", "steiner"]:
        SteinerRatios.Growth(Console.Out);
        break;
    case ["ratios", "steiner", var folder, var optima]:
        SteinerRatios.Print(Console.Out, folder, optima);
        break;
    case ["ratios", ..]:
        Ratios.Print(Console.Out);
        break;
    default:
        BenchmarkSwitcher.FromAssembly(typeof(AssessmentBench).Assembly).Run(args);
        break;
}
