namespace InfusionSim.Planning.Mixing;

/// <summary>When one batch must be in its pot, because the one before is down to the rest.</summary>
/// <param name="Time">Time from the opening of the first feed [s]; null for a batch that only a reserve needs.</param>
/// <param name="Early">The same when the cloth is as permeable as in the fast case of the likely band [s]; null likewise.</param>
public sealed record BatchPour(double? Time, double? Early);
