namespace InfusionSim.Service;

/// <summary>Starts the service.</summary>
public static class Program
{
    /// <summary>Entry point.</summary>
    public static void Main() { }
}
