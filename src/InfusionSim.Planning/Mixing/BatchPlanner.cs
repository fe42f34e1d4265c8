namespace InfusionSim.Planning.Mixing;

/// <summary>Divides what a pot gives into batches that it can bear.</summary>
/// <remarks>
/// A batch is poured when the pot is down to its rest. A batch of a smaller number stands longer and in a larger mass, so the fewest batches that
/// stay cool are looked for
/// from one upwards. All batches are reckoned alike, with the
/// longest stay of any in the slow case of the likely band.
/// </remarks>
internal static class BatchPlanner
{
    /// <summary>Most batches of one pot that the heat of the pot asks for [-]; more are no plan.</summary>
    public const int MostForHeat = 40;

    /// <summary>Most batches of one pot [-]; a smaller batch than that makes is not heeded.</summary>
    public const int MostBatches = 1000;

    // A batch that the scale rounds up is no reason for another one.
    private const double Rounding = 1e-9;

    // A batch that nothing more is drawn from than this share is not needed.
    private const double Beyond = 1e-6;

    /// <summary>Plans one pot.</summary>
    /// <param name="share">What it gives.</param>
    /// <param name="draw">How much has been drawn from it by when.</param>
    /// <param name="inputs">What is known of the resin.</param>
    /// <param name="times">When it happens in the fast and the slow case.</param>
    /// <param name="end">When the last of it is drawn [s].</param>
    public static PotPlan Plan(PotShare share, PotDraw draw, MixInputs inputs, CaseTimes times, double end)
    {
        MixWishes wishes = inputs.Wishes;
        if (!(share.Drawn > 0)) return new(share.Name, 0, 0, [], null, null);
        double mixed = share.Drawn * (1 + wishes.ReserveFraction) + wishes.PotRest;
        bool knowsHeat = inputs is { Kinetics.Heat: not null, ShopTemperature: not null };
        int least = wishes.LargestBatch is double largest ? Math.Max(1, (int)Math.Min(MostBatches, Math.Ceiling(mixed / largest * (1 - Rounding)))) : 1;
        int most = knowsHeat && wishes.LargestBatch is null ? MostForHeat : least;
        for (int batches = least; ; batches++)
        {
            IReadOnlyList<BatchPour> pours = [.. Enumerable.Range(0, batches).Select(k => Pour(k == 0 ? 0 : k * mixed / batches - wishes.PotRest))];
            PotHeat? heat = knowsHeat ? PotHeat.Of(inputs, mixed / batches, inputs.MixToOpen + LongestStay(pours, times, end)) : null;
            if (batches < most && heat?.IsBearable == false) continue;
            return new(share.Name, share.Drawn, mixed, pours, draw.When(mixed - wishes.PotRest), heat);
        }

        BatchPour Pour(double drawn)
        {
            double? time = draw.When((1 + Beyond) * drawn);
            return new(time, time is double known ? times.Early(known) : null);
        }
    }

    private static double LongestStay(IReadOnlyList<BatchPour> pours, CaseTimes times, double end)
    {
        double longest = 0;
        for (int k = 0; k < pours.Count && pours[k].Time is double from && from <= end; k++)
            longest = Math.Max(longest, times.Late(Math.Min(end, k + 1 < pours.Count ? pours[k + 1].Time ?? end : end)) - times.Late(from));
        return longest;
    }
}
