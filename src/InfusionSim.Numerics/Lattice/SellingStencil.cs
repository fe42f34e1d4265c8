namespace InfusionSim.Numerics.Lattice;

/// <summary>Ways between the cells of a lattice that together conduct like a tensor: K = Σ w e eᵀ over at most three whole-number directions e with weights w of at least 0.</summary>
/// <remarks>
/// Selling's reduction: three directions b₀ + b₁ + b₂ = 0 that span the lattice are exchanged until bᵢ·K·bⱼ ≤ 0 for every pair; then
/// K = −Σ (bᵢ·K·bⱼ) eₖ eₖᵀ with eₖ square to bₖ (Selling, J. reine angew. Math. 77 (1874); for anisotropic diffusion Fehrenbach and
/// Mirebeau, J. Math. Imaging Vision 49 (2014); both from memory). It ends for every tensor with principal values above 0, the ways grow
/// longer with their ratio: beyond the next cell above 3 + √8 at some angles. Axes along x and y give the five-point stencil.
/// </remarks>
public sealed class SellingStencil
{
    // What rounding leaves of a weight that is 0 makes no way of its own.
    private const double LeastWeight = 4e-15;

    private SellingStencil(PlaneTensor tensor, IReadOnlyList<LatticeArm> all)
    {
        Tensor = tensor;
        Superbase = all;
        double least = LeastWeight * tensor.Trace;
        Arms = [.. all.Where(arm => arm.Weight > least)];
        Reach = Arms.Select(arm => Math.Max(Math.Abs(arm.Right), arm.Up)).DefaultIfEmpty(0).Max();
    }

    /// <summary>The tensor.</summary>
    public PlaneTensor Tensor { get; }

    /// <summary>The ways that conduct: none for a tensor of 0, mostly two where its axes lie along x and y, at most three.</summary>
    public IReadOnlyList<LatticeArm> Arms { get; }

    /// <summary>Cells that the longest way spans along a row or a column [-].</summary>
    public int Reach { get; }

    /// <summary>Three directions, any two of which span the lattice and one of which is the sum or difference of the others; a weight may be 0.</summary>
    internal IReadOnlyList<LatticeArm> Superbase { get; }

    /// <summary>Weight along a direction [unit of the tensor]; 0 where the stencil has no such way.</summary>
    /// <param name="right">Columns to the right [-].</param>
    /// <param name="up">Rows above [-].</param>
    public double WeightOf(int right, int up)
    {
        foreach (LatticeArm arm in Arms)
        {
            if (arm.Right == right && arm.Up == up) return arm.Weight;
        }

        return 0;
    }

    /// <summary>Finds the ways of a tensor.</summary>
    /// <param name="tensor">The tensor; principal values above 0, or at least 0 with its axes along x and y.</param>
    /// <exception cref="ArgumentOutOfRangeException">When it is neither.</exception>
    public static SellingStencil Of(PlaneTensor tensor)
    {
        if (tensor is { Xy: 0, Xx: >= 0, Yy: >= 0 }) return new(tensor, [new(1, 0, tensor.Xx), new(0, 1, tensor.Yy), new(1, 1, 0)]);
        if (!(tensor.Xx > 0 && tensor.Determinant > 0)) throw new ArgumentOutOfRangeException(nameof(tensor), tensor, "A tensor needs principal values above 0.");
        (int X, int Y) a = (1, 0), b = (0, 1);
        while (true)
        {
            (int X, int Y) c = (-a.X - b.X, -a.Y - b.Y);
            if (Product(tensor, a, b) > 0) a = (-a.X, -a.Y);
            else if (Product(tensor, b, c) > 0) (a, b) = ((-b.X, -b.Y), c);
            else if (Product(tensor, c, a) > 0) (a, b) = ((-c.X, -c.Y), a);
            else return new(tensor, [SquareTo(c, -Product(tensor, a, b)), SquareTo(a, -Product(tensor, b, c)), SquareTo(b, -Product(tensor, c, a))]);
        }
    }

    private static double Product(PlaneTensor tensor, (int X, int Y) a, (int X, int Y) b) =>
        tensor.Xx * (a.X * b.X) + tensor.Yy * (a.Y * b.Y) + tensor.Xy * (a.X * b.Y + a.Y * b.X);

    private static LatticeArm SquareTo((int X, int Y) b, double weight)
    {
        bool turn = b.X < 0 || (b.X == 0 && b.Y > 0);
        return turn ? new(b.Y, -b.X, Math.Max(0, weight)) : new(-b.Y, b.X, Math.Max(0, weight));
    }
}
