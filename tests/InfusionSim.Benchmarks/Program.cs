using BenchmarkDotNet.Running;
using InfusionSim.Benchmarks.Filling;

namespace InfusionSim.Benchmarks;

public static class Program
{
    /// <summary>"ratio" prints the one-run comparisons of the fill; anything else goes to BenchmarkDotNet.</summary>
    public static int Main(string[] arguments)
    {
        if (arguments is ["ratio", ..])
        {
            FillRatios.Print(Console.Out);
            return 0;
        }

        BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(arguments);
        return 0;
    }
}
