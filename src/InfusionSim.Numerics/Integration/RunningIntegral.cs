namespace InfusionSim.Numerics.Integration;

/// <summary>The integral of a positive function from a fixed start, as a monotone table that can be read both ways.</summary>
/// <remarks>
/// Chebyshev series on intervals that are halved until their last terms fall below 10⁻¹³ of the largest value, so both ways are good to better than
/// 10⁻¹⁰ of the whole. Reading costs the sum of a short series, whatever the function costs.
/// </remarks>
public sealed class RunningIntegral
{
    private const double Tolerance = 1e-13;

    private const int DeepestHalving = 40;

    // A function that is itself only known to some digits never converges further; then this many are enough.
    private const int MostPieces = 5000;

    private const int MostSteps = 60;

    private readonly List<ChebyshevPiece> pieces = [];

    private readonly List<double> starts = [];

    private readonly List<double> values = [0];

    /// <summary>Integrates a function.</summary>
    /// <param name="function">The function, at least 0 and smooth between the breaks.</param>
    /// <param name="breaks">Where it starts, where it has kinks or jumps, and where it ends, ascending, in the unit of its argument [-]; at least two.</param>
    public RunningIntegral(Func<double, double> function, IReadOnlyList<double> breaks)
    {
        ArgumentNullException.ThrowIfNull(function);
        ArgumentNullException.ThrowIfNull(breaks);
        if (breaks.Count < 2) throw new ArgumentException("An integral needs a start and an end.", nameof(breaks));
        List<ChebyshevPiece> rough = [];
        for (int k = 1; k < breaks.Count; k++)
            if (breaks[k] > breaks[k - 1]) rough.Add(new(function, breaks[k - 1], breaks[k]));
        double largest = rough.Count == 0 ? 0 : rough.Max(static piece => piece.Largest);
        foreach (ChebyshevPiece piece in rough) Add(function, piece, largest, DeepestHalving);
        (From, To) = (breaks[0], breaks[^1]);
    }

    /// <summary>Start of the table [-].</summary>
    public double From { get; }

    /// <summary>End of the table [-].</summary>
    public double To { get; }

    /// <summary>The integral over the whole table [-].</summary>
    public double Whole => values[^1];

    /// <summary>The integral from the start [-]; outside the table that of its nearer end.</summary>
    /// <param name="x">Up to where [-].</param>
    public double At(double x)
    {
        if (!(x > From)) return double.IsNaN(x) ? x : 0;
        if (x >= To) return Whole;
        int piece = Place(starts, x);
        return values[piece] + pieces[piece].IntegralTo(x);
    }

    /// <summary>Where the integral reaches a value [-]; +∞ where it does not within the table, and NaN for NaN.</summary>
    /// <param name="value">The value [-], at least 0.</param>
    public double Where(double value)
    {
        if (double.IsNaN(value) || value > Whole) return double.IsNaN(value) ? value : double.PositiveInfinity;
        if (value <= 0) return From;
        if (value == Whole) return To;
        int place = Place(values, value);
        ChebyshevPiece piece = pieces[place];
        double wanted = value - values[place], low = piece.From, high = piece.To;
        double x = low + (high - low) * Math.Clamp(wanted / piece.Whole, 0, 1);
        for (int step = 0; step < MostSteps; step++)
        {
            double off = piece.IntegralTo(x) - wanted;
            if (off > 0) high = x; else low = x;
            double next = x - off / piece.At(x);
            if (!(next > low && next < high)) next = (low + high) / 2;
            if (next == x || Math.Abs(next - x) <= 1e-15 * Math.Abs(x)) return next;
            x = next;
        }

        return x;
    }

    private void Add(Func<double, double> function, ChebyshevPiece piece, double largest, int halvings)
    {
        double middle = (piece.From + piece.To) / 2;
        if (halvings > 0 && pieces.Count < MostPieces && piece.Remainder > Tolerance * Math.Max(largest, piece.Largest) && middle > piece.From && middle < piece.To)
        {
            Add(function, new(function, piece.From, middle), largest, halvings - 1);
            Add(function, new(function, middle, piece.To), largest, halvings - 1);
            return;
        }

        pieces.Add(piece);
        starts.Add(piece.From);
        values.Add(values[^1] + piece.Whole);
    }

    // Last entry at or below the number.
    private int Place(List<double> ascending, double number)
    {
        int found = ascending.BinarySearch(number);
        return Math.Clamp(found >= 0 ? found : ~found - 1, 0, pieces.Count - 1);
    }
}
