using InfusionSim.Plots.Keys;
using InfusionSim.Plots.Panels;

namespace InfusionSim.Plots.Fronts;

/// <summary>One of several fronts on a picture, with what stands over it.</summary>
/// <param name="Answer">The plan and its answer.</param>
/// <param name="Title">Its title.</param>
/// <param name="Badge">Its outcome; null where the picture says it once for all.</param>
/// <param name="Text">What it says, in a few words.</param>
internal sealed record FrontCell(PanelAnswer Answer, string Title, Badge? Badge, string Text);
