namespace InfusionSim.Physics.Resins;

/// <summary>How the glass transition of a resin rises with its cure: (Tg − Tg₀)/(Tg∞ − Tg₀) = λα/(1 − (1 − λ)α).</summary>
/// <remarks>
/// Source: DiBenedetto, J. Polym. Sci. B 25 (1987) 1949–1969 (from memory). Where Tg passes the temperature of the cure, the cure all but stops.
/// </remarks>
/// <param name="Uncured">Tg₀, before any cure [K].</param>
/// <param name="Cured">Tg∞, of the complete cure [K].</param>
/// <param name="Lambda">λ [-], above 0, at most 1.</param>
public sealed record GlassTransition(double Uncured, double Cured, double Lambda)
{
    /// <summary>Glass transition [K].</summary>
    /// <param name="conversion">Degree of cure [-], 0 to 1.</param>
    public double At(double conversion) => Uncured + (Cured - Uncured) * Lambda * conversion / (1 - (1 - Lambda) * conversion);
}
