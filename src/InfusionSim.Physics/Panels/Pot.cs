namespace InfusionSim.Physics.Panels;

/// <summary>A pot that one or several feeds draw from, joined by T-pieces when there are several.</summary>
/// <param name="Name">What screens and messages call it.</param>
/// <param name="Level">Height of the resin in it above the fitting of the first feed it serves [m]; below 0 when it stands lower.</param>
/// <param name="Hose">Hose from the pot to the T-piece at which the feeds' own hoses part; null for none.</param>
public sealed record Pot(string Name, double Level, Hose? Hose = null)
{
    /// <summary>What it holds [kg]; null for as much as is drawn.</summary>
    public double? Mass { get; init; }
}
