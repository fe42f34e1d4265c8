using MathNet.Numerics.Interpolation;

namespace InfusionSim.Physics.Resins;

/// <summary>A viscosity that was measured over time at one temperature.</summary>
/// <remarks>
/// Between the points ln μ follows cubics that never leave the range of their two ends (Fritsch and Carlson, SIAM J. Numer. Anal. 17 (1980) 238–246,
/// from memory). Before the first point it is as thick as there, which is cautious; after the last nothing is known, so it gels there at the latest.
/// </remarks>
public sealed record MeasuredViscosity : ViscosityModel
{
    private readonly CubicSpline logarithm;

    private readonly double[] times;

    /// <summary>A curve through points.</summary>
    /// <param name="times">Times from mixing [s], rising, at least two.</param>
    /// <param name="viscosities">Viscosity at each of them [Pa·s], above 0, never falling.</param>
    public MeasuredViscosity(IReadOnlyList<double> times, IReadOnlyList<double> viscosities)
    {
        ArgumentNullException.ThrowIfNull(times);
        ArgumentNullException.ThrowIfNull(viscosities);
        if (times.Count < 2 || times.Count != viscosities.Count) throw new ArgumentException("A curve needs one viscosity for each of at least two times.", nameof(times));
        for (int k = 1; k < times.Count; k++)
        {
            if (!(times[k] > times[k - 1])) throw new ArgumentException("The times must rise.", nameof(times));
            if (!(viscosities[k] >= viscosities[k - 1])) throw new ArgumentException("The viscosities must not fall.", nameof(viscosities));
        }

        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(viscosities[0]);
        this.times = [.. times];
        double[] logarithms = [.. viscosities.Select(static viscosity => Math.Log(viscosity))];

        // The rule for the ends needs three points; two are a straight line.
        logarithm = times.Count < 3
            ? CubicSpline.InterpolateHermiteSorted(this.times, logarithms, [.. times.Select(_ => (logarithms[1] - logarithms[0]) / (times[1] - times[0]))])
            : CubicSpline.InterpolatePchipSorted(this.times, logarithms);
    }

    /// <inheritdoc/>
    public override ViscosityCourse Along(TemperatureCourse? temperature, double mixToOpen) => new Course(this, mixToOpen);

    private sealed class Course(MeasuredViscosity curve, double mixToOpen) : ViscosityCourse
    {
        public override double KnownUntil => curve.times[^1] - mixToOpen;

        public override IReadOnlyList<double> Kinks => [.. curve.times.Select(time => time - mixToOpen)];

        public override double At(double time) =>
            Math.Exp(curve.logarithm.Interpolate(Math.Clamp(time + mixToOpen, curve.times[0], curve.times[^1])));
    }
}
