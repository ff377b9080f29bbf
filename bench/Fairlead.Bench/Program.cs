using System.Globalization;
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
    case ["plan", var zip, var bounds, var effort, var rows, .. var rest]:
        PlanRatios.Print(zip, bounds, double.Parse(effort, CultureInfo.InvariantCulture), rows, Console.Out, rest.Where(r => r != "plain").Select(r => int.Parse(r, CultureInfo.InvariantCulture)).FirstOrDefault(int.MaxValue), rest.Contains("plain"));
        break;
    case ["ratios", "network"]:
        NetworkRatios.Print(Console.Out);
        break;
    case ["ratios", "structure"]:
        StructureRatios.Print(Console.Out);
        break;
    case ["ratios", "cutting", var folder]:
        CuttingRatios.Print(Console.Out, folder);
        break;
    case ["ratios", "log"]:
        LogRatios.Print(Console.Out);
        break;
    case ["ratios", "workbench"]:
        WorkbenchRatios.Desk(Console.Out);
        break;
    case ["ratios", "workbench", "memory"]:
        WorkbenchRatios.Memory(Console.Out);
        break;
    case ["ratios", "workbench", var address, var job]:
        await WorkbenchRatios.Served(Console.Out, new Uri(address), job);
        break;
    case ["ratios", "routing"]:
        RoutingRatios.Print(Console.Out);
        break;
    case ["ratios", ..]:
        Ratios.Print(Console.Out);
        break;
    default:
        BenchmarkSwitcher.FromAssembly(typeof(AssessmentBench).Assembly).Run(args);
        break;
}
