using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Engines;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;
using InfusionSim.Benchmarks.Filling;
using InfusionSim.Benchmarks.Resins;
using InfusionSim.Benchmarks.Solving;

namespace InfusionSim.Benchmarks;

public static class Program
{
    /// <summary>
    /// "ratio" prints the one-run comparisons of the fill and of ten resins, "resins" the latter alone, "linear" those of one pressure solve,
    /// "cancel" how fast a forecast gives up; anything else goes to BenchmarkDotNet.
    /// </summary>
    public static int Main(string[] arguments)
    {
        if (arguments is ["ratio", ..])
        {
            FillRatios.Print(Console.Out);
            ResinRatio.Print(Console.Out);
            return 0;
        }

        if (arguments is ["resins", ..])
        {
            ResinRatio.Print(Console.Out);
            return 0;
        }

        if (arguments is ["linear", ..])
        {
            LinearRatios.Print(Console.Out);
            return 0;
        }

        if (arguments is ["cancel", ..])
        {
            CancelLatency.Print(Console.Out);
            return 0;
        }

        // In process: nothing is restored or built again, so it runs without a network.
        Job job = Job.Default
            .WithToolchain(InProcessEmitToolchain.Instance)
            .WithStrategy(RunStrategy.Monitoring)
            .WithWarmupCount(2)
            .WithIterationCount(7);
        BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(arguments, DefaultConfig.Instance.AddJob(job));
        return 0;
    }
}
