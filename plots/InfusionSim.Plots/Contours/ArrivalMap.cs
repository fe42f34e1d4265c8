using InfusionSim.Protocol.V1;

namespace InfusionSim.Plots.Contours;

/// <summary>When the front passes each place of the cloth, ready for isochrones.</summary>
/// <remarks>Contours are traced on the square root of the time: in a straight fill it is linear in the distance (t ∝ x²), so that a straight line between two middles is exact.</remarks>
internal sealed class ArrivalMap
{
    private readonly CellGrid _grid;
    private readonly byte[] _squares;
    private readonly ClothArea _cloth;
    private readonly SquareField _roots;
    private readonly float[] _times;
    private readonly bool[] _isInner;

    /// <summary>Reads the map of a response.</summary>
    internal ArrivalMap(FrontMap map, ClothArea cloth)
    {
        _grid = map.Grid;
        _squares = map.Squares.ToByteArray();
        _cloth = cloth;
        _times = [.. map.ArrivalTimeS];
        var count = _grid.Columns * _grid.Rows;
        if (_squares.Length != count || _times.Length != count)
        {
            throw new ArgumentException($"The front map has {_squares.Length} squares and {_times.Length} times; its grid has {count}.", nameof(map));
        }

        var times = new double[count];
        for (var i = 0; i < count; i++)
        {
            times[i] = Is(i, SquareState.Wets) ? Math.Sqrt(Math.Max(0, _times[i])) : double.NaN;
        }

        _isInner = InnerSquares();
        _roots = SquareField.Continue(_grid, times, straight: true);
    }

    /// <summary>Rings around the places that the front reaches at a time or later, cut by nothing: clip them to the cloth.</summary>
    internal List<List<Spot>> From(double timeS) => ContourTracer.Trace(_roots, Math.Sqrt(timeS));

    /// <summary>The lines on which the front stands at a time, cut to the wetted cloth.</summary>
    internal Isochrone At(double timeS) => new(timeS, LineCutter.Cut(From(timeS), _grid.CellMm / 4, IsWetted));

    /// <summary>Rings around the squares of one state, cut by nothing: clip them to the cloth.</summary>
    internal List<List<Spot>> Around(SquareState state)
    {
        var shares = new double[_squares.Length];
        var any = false;
        for (var i = 0; i < shares.Length; i++)
        {
            shares[i] = Is(i, SquareState.NoCloth) ? double.NaN : Is(i, state) ? 1 : 0;
            any |= shares[i] == 1;
        }

        return any ? ContourTracer.Trace(SquareField.Continue(_grid, shares, straight: false), 0.5).ConvertAll(RingSmoother.Smooth) : [];
    }

    /// <summary>Whether the front has passed the square around a place at a time.</summary>
    internal bool IsWet(Spot spot, double timeS)
    {
        var square = SquareAt(spot);
        return Is(square, SquareState.NoCloth) || (Is(square, SquareState.Wets) && _times[square] <= timeS);
    }

    private bool Is(int square, SquareState state) => _squares[square] == (byte)state;

    private bool IsWetted(Spot spot)
    {
        var square = SquareAt(spot);
        return _isInner[square] ? Is(square, SquareState.Wets) : (Is(square, SquareState.Wets) || Is(square, SquareState.NoCloth)) && _cloth.Contains(spot);
    }

    // Squares with cloth in every neighbour: the outline cannot cross them, so that only the others ask for it.
    private bool[] InnerSquares()
    {
        var inner = new bool[_squares.Length];
        for (var row = 1; row < _grid.Rows - 1; row++)
        {
            for (var column = 1; column < _grid.Columns - 1; column++)
            {
                var square = row * _grid.Columns + column;
                inner[square] = true;
                for (var offset = -_grid.Columns; offset <= _grid.Columns; offset += _grid.Columns)
                {
                    inner[square] &= !Is(square + offset - 1, SquareState.NoCloth) && !Is(square + offset, SquareState.NoCloth) && !Is(square + offset + 1, SquareState.NoCloth);
                }
            }
        }

        return inner;
    }

    /// <summary>The square around a place, or the nearest one to it.</summary>
    internal int SquareAt(Spot spot)
    {
        var column = Math.Clamp((int)Math.Floor((spot.XMm - _grid.OriginXMm) / _grid.CellMm), 0, _grid.Columns - 1);
        var row = Math.Clamp((int)Math.Floor((spot.YMm - _grid.OriginYMm) / _grid.CellMm), 0, _grid.Rows - 1);
        return row * _grid.Columns + column;
    }
}
