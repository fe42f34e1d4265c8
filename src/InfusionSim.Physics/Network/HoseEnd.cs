namespace InfusionSim.Physics.Network;

/// <summary>How resin gets to the far end of a hose: from which node, through which resistance.</summary>
/// <param name="Node">The last node before the end; −1 where that is the fixed pressure of a feed or vent.</param>
/// <param name="Resistance">Resistance from there to the end [1/m³].</param>
internal readonly record struct HoseEnd(int Node, double Resistance)
{
    /// <summary>The fixed pressure itself.</summary>
    public static HoseEnd Fixed { get; } = new(-1, 0);
}
