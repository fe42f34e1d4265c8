namespace InfusionSim.Cli;

/// <summary>Starts the command line.</summary>
public static class Program
{
    /// <summary>Entry point.</summary>
    public static void Main() { }
}
