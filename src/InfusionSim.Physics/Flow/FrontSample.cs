namespace InfusionSim.Physics.Flow;

/// <summary>What the front is followed by, at one moment.</summary>
/// <param name="Clock">Drive clock [-].</param>
/// <param name="Share">How full each node is [-]. [nodes].</param>
/// <param name="Rate">How fast that grows with the clock [-]; 0 where it is dry or full. [nodes].</param>
/// <param name="FullFor">How long each node has been full, at least [-]; 0 where it is not. [nodes].</param>
internal sealed record FrontSample(double Clock, double[] Share, double[] Rate, double[] FullFor);
