using InfusionSim.Numerics.Geometry;
using InfusionSim.Physics.Quality;
using InfusionSim.Protocol.Units;
using Contract = InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Forecasts;

/// <summary>Turns the quality numbers of a fill into the contract's.</summary>
internal static class QualityMapping
{
    private const string CapillaryNumberBasis =
        "Doubtful: publications put the number with the fewest voids anywhere in this range, a whole decade, and it differs from cloth to cloth. Shown, not judged. Beside a feed, and in a twentieth of the cloth at either end, it is left out.";

    /// <summary>How a resin wets the fibres; null without a surface tension.</summary>
    /// <param name="resin">The resin of a sound plan.</param>
    public static Wetting? ToWetting(Contract.Resin resin) => !resin.HasSurfaceTensionMnPerM ? null
        : new(UnitConversion.NewtonPerMetreFromMn(resin.SurfaceTensionMnPerM), resin.HasContactAngleDeg ? UnitConversion.RadiansFromDeg(resin.ContactAngleDeg) : 0);

    /// <summary>Maps the summary.</summary>
    /// <param name="quality">The numbers.</param>
    public static Contract.FillQuality ToContract(FillQuality quality)
    {
        var answer = new Contract.FillQuality();
        if (quality.FrontSpeed is QualityRange speed)
        {
            answer.FrontSpeedFromMmPerMin = MmPerMin(speed.From);
            answer.FrontSpeedToMmPerMin = MmPerMin(speed.To);
        }

        if (quality.CapillaryNumber is QualityRange number)
        {
            answer.CapillaryNumberFromRatio = Kept(number.From);
            answer.CapillaryNumberToRatio = Kept(number.To);
            answer.PublishedFromRatio = CapillaryNumber.PublishedFrom;
            answer.PublishedToRatio = CapillaryNumber.PublishedTo;
            answer.BelowPublishedFraction = Kept(quality.BelowPublished ?? 0);
            answer.AbovePublishedFraction = Kept(quality.AbovePublished ?? 0);
            answer.CapillaryNumberBasis = CapillaryNumberBasis;
        }

        if (quality.SmallestGelMargin is double margin) answer.SmallestGelMarginFraction = Kept(margin);
        if (quality.SmallestGelMarginAt is Point2 at) answer.SmallestGelMarginAt = ForecastMapping.ToPoint(at);
        return answer;
    }

    /// <summary>Adds the numbers of each square to a front map.</summary>
    /// <param name="map">The front map.</param>
    /// <param name="quality">The numbers, by cell.</param>
    /// <param name="ownerOf">Cell that owns each square [-]; −1 without cloth.</param>
    public static void AddTo(Contract.FrontMap map, FillQuality quality, int[] ownerOf)
    {
        map.FrontSpeedMmPerMin.AddRange(ownerOf.Select(owner => At(quality.FrontSpeeds, owner, 60_000)));
        map.GelMarginFraction.AddRange(ownerOf.Select(owner => At(quality.GelMargins, owner, 1)));
        if (quality.CapillaryNumbers is double[] numbers) map.CapillaryNumberRatio.AddRange(ownerOf.Select(owner => At(numbers, owner, 1)));
    }

    private static float At(double[] values, int owner, double scale) => owner < 0 || !double.IsFinite(values[owner]) ? 0 : (float)(values[owner] * scale);

    private static double MmPerMin(double metresPerSecond) => UnitConversion.MmPerMinFromMetresPerSecond(Finite.Needed(metresPerSecond, "the speed of the front"));

    private static double Kept(double value) => UnitConversion.Kept(Finite.Needed(value, "a quality number"));
}
