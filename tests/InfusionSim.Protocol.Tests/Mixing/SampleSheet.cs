using InfusionSim.Planning.Mixing;

namespace InfusionSim.Protocol.Tests.Mixing;

/// <summary>A mix sheet put together by hand: 5.13 kg drawn from one pot in two batches.</summary>
internal static class SampleSheet
{
    public static MixSheet Of(MixRatio? ratio = null, PotHeat? heat = null, Func<PotPlan, PotPlan>? change = null)
    {
        PotPlan pot = new("F1", 5.13, 6, [new(0, 0), new(300, 200)], 2400, heat);
        return new(new(3.094, 1.87, 0.166, 0), 0.77, 0.1, [change?.Invoke(pot) ?? pot], ratio);
    }

    /// <summary>A pot that stays cool while resin is drawn from it.</summary>
    public static PotHeat Cool { get; } = new(3, 0.9, 293.15, 1260, 305.35, 313.15, 520, 2010);

    /// <summary>A pot that gets warmer than is wished for.</summary>
    public static PotHeat Warm { get; } = Cool with { Warmest = 330.25, LeftStanding = 420 };

    /// <summary>A pot that runs away.</summary>
    public static PotHeat Hot { get; } = Cool with { Warmest = 500 };
}
