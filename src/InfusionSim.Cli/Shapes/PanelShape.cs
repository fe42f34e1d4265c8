using InfusionSim.Protocol.V1;

namespace InfusionSim.Cli.Shapes;

/// <summary>A shape of panel that a plan can begin with.</summary>
/// <param name="Name">What to type.</param>
/// <param name="Sizes">How its size is written: WIDTHxHEIGHT.</param>
/// <param name="Example">A size to try.</param>
/// <param name="Lines">Where its feeds and vents lie, in words.</param>
/// <param name="FewestSizes">Lengths that must be given [-].</param>
/// <param name="MostSizes">Lengths that may be given [-].</param>
/// <param name="Draw">Draws outline, cut-outs, feeds, vents and timing marks from the lengths [mm].</param>
public sealed record PanelShape(string Name, string Sizes, string Example, string Lines, int FewestSizes, int MostSizes, Action<InfusionPlan, double[]> Draw);
