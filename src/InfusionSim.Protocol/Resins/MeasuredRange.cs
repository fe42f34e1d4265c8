using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Resins;

/// <summary>Temperatures that a number of the card was measured at, and how far from them it is still used.</summary>
/// <param name="Path">Where the number stands.</param>
/// <param name="FromDegC">Coldest [°C].</param>
/// <param name="ToDegC">Warmest [°C].</param>
/// <param name="TrustedDegC">How far outside it is used without a word [°C].</param>
/// <param name="RefusedDegC">How far outside it is used at all [°C].</param>
/// <param name="Advice">What to do beyond that.</param>
internal sealed record MeasuredRange(string Path, double FromDegC, double ToDegC, double TrustedDegC, double RefusedDegC, string Advice)
{
    // How far a law carries, all our own judgement: a line through several points a little beyond them, an activation farther than the rule of thumb.
    private const double BeyondTheLine = 10, ByActivation = 30, ByRule = 15, TrustedByActivation = 10, TrustedByRule = 5, BesideACurve = 2;

    private const string Nearer = "Measure nearer to that temperature.";

    /// <summary>Whether a temperature lies so far outside that the number is a guess.</summary>
    public bool IsExtrapolated(double degC) => degC < FromDegC - TrustedDegC || degC > ToDegC + TrustedDegC;

    /// <summary>Whether a temperature lies too far outside to be used.</summary>
    public bool IsRefused(double degC) => degC < FromDegC - RefusedDegC || degC > ToDegC + RefusedDegC;

    /// <summary>The ranges of a card.</summary>
    public static IEnumerable<MeasuredRange> Of(Resin card)
    {
        if (card.HasViscosityAtDegC)
            yield return One("resin.viscosityAtDegC", card.ViscosityAtDegC, card.HasViscosityActivationKjPerMol, card.HasViscosityActivationKjPerMol ? "Give resin.viscosityTemperatures." : "Give resin.viscosityTemperatures or resin.viscosityActivationKjPerMol.");
        if (card.ViscosityTemperatures.Count(row => row.HasDegC) > 1)
        {
            yield return new MeasuredRange(
                "resin.viscosityTemperatures", card.ViscosityTemperatures.Min(row => row.DegC), card.ViscosityTemperatures.Max(row => row.DegC), 0, BeyondTheLine,
                Nearer);
        }

        if (card.ViscosityCurve is { HasAtDegC: true } curve)
            yield return new MeasuredRange("resin.viscosityCurve.atDegC", curve.AtDegC, curve.AtDegC, BesideACurve, BesideACurve, "A curve says nothing of another temperature: measure one there, or give viscosityRise or kinetics in its place.");
        if (card.ViscosityRise is { HasAtDegC: true } rise)
            yield return One("resin.viscosityRise.atDegC", rise.AtDegC, rise.HasActivationKjPerMol, rise.HasActivationKjPerMol ? Nearer : $"Give resin.viscosityRise.activationKjPerMol. {Nearer}");
        if (card.HasGelTimeAtDegC)
            yield return One("resin.gelTimeAtDegC", card.GelTimeAtDegC, card.HasGelTimeActivationKjPerMol, card.HasGelTimeActivationKjPerMol ? Nearer : $"Give resin.gelTimeActivationKjPerMol. {Nearer}");
        if (card.Kinetics is { HasFittedFromDegC: true, HasFittedToDegC: true } kinetics)
            yield return new MeasuredRange("resin.kinetics", kinetics.FittedFromDegC, kinetics.FittedToDegC, 0, BeyondTheLine, "Take kinetics that were fitted there.");
    }

    private static MeasuredRange One(string path, double degC, bool hasActivation, string advice) =>
        new(path, degC, degC, hasActivation ? TrustedByActivation : TrustedByRule, hasActivation ? ByActivation : ByRule, advice);
}
