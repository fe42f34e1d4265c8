using InfusionSim.Numerics.Stencils;

namespace InfusionSim.Physics.Air;

/// <summary>The gas of sealed pockets during a stretch of a fill: it holds what is not full in a pocket at the pocket's pressure, which runs straight from one value to another.</summary>
/// <remarks>
/// With w the accumulated resin pressure and ψ that of the gas, a node in a pocket has w = ψ until it is full. In v = w − ψ the state is the same complementarity
/// problem as without gas, with −A ψ as an extra load: gas takes away what flows in, and pushes on the full nodes beside it. Derived.
/// </remarks>
/// <param name="pockets">Nodes of each pocket that are not full as the stretch begins.</param>
/// <param name="from">Pressure of each as the stretch begins, above the bag's over the driving pressure [-].</param>
/// <param name="span">Length of the stretch [-], above 0.</param>
internal sealed class GasHold(IReadOnlyList<IReadOnlyList<int>> pockets, double[] from, double span)
{
    // To where the pressures at the end of a stretch are found.
    private const double Settled = 1e-5;

    private readonly List<NodeNeighbour> _neighbours = [];
    private readonly HashSet<int> _nodes = [.. pockets.SelectMany(static pocket => pocket)];

    /// <summary>Nodes of each pocket that are not full as the stretch begins.</summary>
    public IReadOnlyList<IReadOnlyList<int>> Pockets => pockets;

    /// <summary>Pressure of each pocket as the stretch begins [-].</summary>
    public double[] From => from;

    /// <summary>Pressure of each pocket as the stretch ends [-].</summary>
    public double[] To { get; } = [.. from];

    /// <summary>Whether the pressures go on where those of another stretch ended.</summary>
    /// <param name="before">The other stretch; null for none.</param>
    public bool GoesOnFrom(GasHold? before) => before is not null && before.To.Length == from.Length && !from.Where((value, k) => Math.Abs(value - before.To[k]) > Settled).Any();

    /// <summary>Writes the pressure of the gas into its nodes [-]. [nodes].</summary>
    /// <param name="since">Drive clock since the stretch began [-].</param>
    /// <param name="target">Where to; 0 elsewhere.</param>
    public void WritePressure(double since, double[] target) => Write(pocket => from[pocket] + (To[pocket] - from[pocket]) * since / span, target);

    /// <summary>Writes the pressure of the gas, accumulated since the stretch began, into its nodes [-]. [nodes].</summary>
    /// <param name="since">Drive clock since the stretch began [-].</param>
    /// <param name="target">Where to; 0 elsewhere.</param>
    public void WriteAccumulated(double since, double[] target) => Write(pocket => since * (from[pocket] + (To[pocket] - from[pocket]) * since / span / 2), target);

    /// <summary>What a gas pressure, or an accumulated one, takes from and gives to the nodes [m³]: −A ψ. [nodes].</summary>
    /// <param name="network">Conductances.</param>
    /// <param name="gas">The pressure ψ, 0 outside the pockets [-]. [nodes].</param>
    public double[] LoadOf(LatticeOperator network, double[] gas)
    {
        double[] load = new double[gas.Length];
        foreach (int node in _nodes)
        {
            network.CollectNeighbours(node, _neighbours);
            foreach ((int other, double conductance) in _neighbours)
            {
                load[node] -= conductance * (gas[node] - gas[other]);
                if (!_nodes.Contains(other)) load[other] += conductance * gas[node];
            }

            load[node] -= network.Anchor[node] * gas[node];
        }

        return load;
    }

    private void Write(Func<int, double> valueOf, double[] target)
    {
        Array.Clear(target);
        for (int pocket = 0; pocket < pockets.Count; pocket++)
        {
            double value = valueOf(pocket);
            foreach (int node in pockets[pocket]) target[node] = value;
        }
    }
}
