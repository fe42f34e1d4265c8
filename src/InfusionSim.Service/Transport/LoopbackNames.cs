namespace InfusionSim.Service.Transport;

/// <summary>The names this machine has for itself; a request under any other name comes from a page that wants to look like it.</summary>
internal static class LoopbackNames
{
    /// <summary>The names.</summary>
    public static IReadOnlyList<string> Hosts { get; } = ["localhost", "127.0.0.1", "[::1]"];
}
