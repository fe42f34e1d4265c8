namespace InfusionSim.Numerics.Grids.Cutting;

/// <summary>One connected part of the region inside one square that an edge cuts.</summary>
/// <param name="square">Index of the square.</param>
/// <param name="outer">Its outer border, anticlockwise [squares].</param>
internal sealed class SquarePart(int square, List<GridPoint> outer)
{
    /// <summary>Index of the square.</summary>
    public int Square { get; } = square;

    /// <summary>Outer border, anticlockwise [squares].</summary>
    public List<GridPoint> Outer { get; } = outer;

    /// <summary>Borders of the holes inside it, clockwise [squares].</summary>
    public List<List<GridPoint>> Holes { get; } = [];

    /// <summary>Area in squares [-].</summary>
    public double Area { get; set; }

    /// <summary>First moment about the middle of the square, to the right [cubed side].</summary>
    public double MomentU { get; set; }

    /// <summary>First moment about the middle of the square, upwards [cubed side].</summary>
    public double MomentV { get; set; }

    /// <summary>Number of the part: the square's index for its largest part, from the number of squares upwards for the others.</summary>
    public int Number { get; set; } = square;
}
