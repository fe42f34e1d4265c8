using BenchmarkDotNet.Running;

namespace InfusionSim.Benchmarks;

public static class Program
{
    public static void Main(string[] arguments) => BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(arguments);
}
