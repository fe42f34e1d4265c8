using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Panels;

namespace InfusionSim.Physics.Tests.Properties;

/// <summary>Panels without any symmetry of their own, all within one rectangle.</summary>
public static class UnevenPanels
{
    private static readonly Zone Cloth = new("skin", null, 3e-3, 0.5, new Permeability(1e-10, 3e-10, 1e-12, 0));

    /// <summary>The panels by name.</summary>
    public static IReadOnlyDictionary<string, Panel> All { get; } = new Dictionary<string, Panel>
    {
        ["two zones round a cut-out, membrane"] = LopsidedPanel.Of(VentKind.Membrane),
        ["two zones round a cut-out, tube"] = LopsidedPanel.Of(VentKind.Tube),
        ["two zones of turned cloth round a cut-out, tube"] = TurnedCloth(LopsidedPanel.Of(VentKind.Tube)),
        ["hook fed at a fitting"] = new(
            new Region(new Ring([new(0, 0), new(LopsidedPanel.Width, 0), new(LopsidedPanel.Width, 0.08), new(0.12, 0.08), new(0.12, LopsidedPanel.Height), new(0, LopsidedPanel.Height)]), []),
            [Cloth],
            [new Feed("F1", new LinePath([new(0.053, 0.145)]), 0.012)],
            [new Vent("V1", new LinePath([new(LopsidedPanel.Width, 0.01), new(LopsidedPanel.Width, 0.06)]), 0.012, VentKind.Tube)],
            [],
            0.01),
        ["plate fed along a slanted line inside"] = new(
            new Region(new Ring([new(0, 0), new(LopsidedPanel.Width, 0), new(LopsidedPanel.Width, LopsidedPanel.Height), new(0, LopsidedPanel.Height)]), []),
            [Cloth],
            [new Feed("F1", new LinePath([new(0.083, 0.034), new(0.146, 0.127)]), 0.012)],
            [
                new Vent("V1", new LinePath([new(0, 0.03), new(0, 0.11)]), 0.012, VentKind.Membrane),
                new Vent("V2", new LinePath([new(0.262, 0.157)]), 0.012, VentKind.Tube),
            ],
            [],
            0.01),
    };

    // 20 : 1, at angles whose ways span two squares.
    private static Panel TurnedCloth(Panel panel) => panel with
    {
        Zones = [.. panel.Zones.Select((zone, k) => zone with { Permeability = new Permeability(20 * zone.Permeability.K2, zone.Permeability.K2, 1e-12, k == 0 ? 0.57 : -1.2) })],
    };
}
