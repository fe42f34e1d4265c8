namespace InfusionSim.Physics.Air;

/// <summary>How long the steps of a fill with trapped gas are.</summary>
/// <remarks>
/// Within a step no pocket may change its pressure, its volume, or the speed at which it gives way by more than the step resolves. Towards its last volume a pocket
/// slows down by e in a time of its own, which the steps must not outgrow: with four steps in that time a second-order step is 0.1 % off (derived).
/// </remarks>
internal sealed class GasPace
{
    // Largest change of a pocket within a step: of its pressure over the driving pressure, of its volume and of its speed over themselves.
    private const double LargestRise = 0.12, LargestShrink = 0.2, LargestSlowing = 0.25;
    private const double Aim = 0.5, Growth = 2;

    // Changes of speed that move a volume by less than this share within a step do not matter.
    private const double Unseen = 2e-4;

    // A pocket below this share of the pore volume follows the resin round it at once; its volume is known well enough at any step. Its speed is
    // rounding below the second share.
    private const double Small = 3e-3, SmallForSpeed = 0.05;

    private readonly double _least, _leastForSpeed;
    private double[] _speeds = [];

    /// <summary>Makes the pace of a fill.</summary>
    /// <param name="pores">Pore volume of the panel [m³].</param>
    public GasPace(double pores) => (_least, _leastForSpeed) = (Small * pores, SmallForSpeed * pores);

    /// <summary>Length of the next step [-]; 0 before the first.</summary>
    public double Span { get; set; }

    /// <summary>Begins anew, as after a turn of a clamp.</summary>
    public void Restart()
    {
        Span = 0;
        _speeds = [];
    }

    /// <summary>How large a change is, over the largest allowed [-].</summary>
    /// <param name="from">Pressures as the step begins [-].</param>
    /// <param name="to">Pressures as it ends [-].</param>
    /// <param name="before">Volumes as it begins [m³].</param>
    /// <param name="after">Volumes as it ends [m³].</param>
    public double ChangeOf(double[] from, double[] to, double[] before, IReadOnlyList<double> after) => Enumerable.Range(0, from.Length)
        .Max(k =>
        {
            double larger = Math.Max(before[k], after[k]), rise = larger > _least ? Math.Abs(to[k] - from[k]) / LargestRise : 0;
            return Math.Max(rise, Math.Abs(after[k] - before[k]) / Math.Max(larger, _least) / LargestShrink);
        });

    /// <summary>Shortens a step that was too long.</summary>
    /// <param name="length">Its length [-].</param>
    /// <param name="change">How large the change was, over the largest allowed [-]; NaN when the step was not found.</param>
    public void Shorten(double length, double change) => Span = length / (double.IsNaN(change) ? 2 : Math.Clamp(change / Aim, 1.5, 8));

    /// <summary>Sets the length of the next step after one that was found.</summary>
    /// <param name="length">Its length [-].</param>
    /// <param name="change">How large the change was, over the largest allowed [-].</param>
    /// <param name="before">Volumes as it began [m³].</param>
    /// <param name="after">Volumes as it ended [m³].</param>
    public void GoOn(double length, double change, double[] before, IReadOnlyList<double> after)
    {
        double[] speeds = [.. before.Select((volume, k) => (after[k] - volume) / length)];
        double slowing = 0;
        for (int k = 0; k < speeds.Length && speeds.Length == _speeds.Length; k++)
        {
            double step = Math.Abs(speeds[k] - _speeds[k]), largest = Math.Max(Math.Abs(speeds[k]), Math.Abs(_speeds[k]));
            if (largest > 0) slowing = Math.Max(slowing, Math.Min(step / largest / LargestSlowing, step * length / Math.Max(after[k], _leastForSpeed) / Unseen));
        }

        _speeds = speeds;
        Span = length * Math.Clamp(Aim / Math.Max(Math.Max(change, slowing * Aim), 1e-3), 0.5, Growth);
    }
}
