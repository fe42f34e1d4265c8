namespace InfusionSim.Benchmarks;

public static class Program
{
    public static void Main() { }
}
