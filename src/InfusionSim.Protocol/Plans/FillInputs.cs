using InfusionSim.Physics.Panels;
using InfusionSim.Protocol.V1;
using Bag = InfusionSim.Physics.Clock.Bag;
using Goals = InfusionSim.Physics.Forecasts.Goals;
using Resin = InfusionSim.Physics.Resins.Resin;

namespace InfusionSim.Protocol.Plans;

/// <summary>A plan as the physics takes it, in SI.</summary>
/// <param name="Plan">The plan itself, with its defaults, for names and words.</param>
/// <param name="Panel">Cloth and line plan.</param>
/// <param name="Resin">What flows.</param>
/// <param name="Bag">What drives it.</param>
/// <param name="Goals">What is asked of it.</param>
/// <param name="PermeabilityFactor">How uncertain the permeability is, times or divided by [-].</param>
public sealed record FillInputs(InfusionPlan Plan, Panel Panel, Resin Resin, Bag Bag, Goals Goals, double PermeabilityFactor);
