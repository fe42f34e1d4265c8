namespace InfusionSim.Numerics.Lines;

/// <summary>In which order the nodes of a sparse symmetric matrix are eliminated, and where the factor then holds numbers.</summary>
/// <remarks>
/// Always the node with the fewest neighbours left, so that chains and trees fill in nothing. Source: minimum degree, George and Liu,
/// SIAM Rev. 31 (1989) 1 (from memory).
/// </remarks>
internal sealed class EliminationOrder
{
    /// <summary>Finds an order.</summary>
    /// <param name="count">Number of nodes.</param>
    /// <param name="joints">Pairs of nodes that are coupled, each pair at most once.</param>
    public EliminationOrder(int count, IReadOnlyList<(int First, int Second)> joints)
    {
        SortedSet<int>[] beside = [.. Enumerable.Range(0, count).Select(static _ => new SortedSet<int>())];
        foreach ((int first, int second) in joints)
        {
            beside[first].Add(second);
            beside[second].Add(first);
        }

        SortedSet<(int Degree, int Node)> waiting = [.. Enumerable.Range(0, count).Select(node => (beside[node].Count, node))];
        Nodes = new int[count];
        Later = new int[count][];
        for (int step = 0; step < count; step++)
        {
            int node = waiting.Min.Node;
            waiting.Remove(waiting.Min);
            Nodes[step] = node;
            int[] later = [.. beside[node]];
            Later[node] = later;
            foreach (int other in later)
            {
                waiting.Remove((beside[other].Count, other));
                beside[other].Remove(node);
                foreach (int third in later) if (third != other) beside[other].Add(third);
                waiting.Add((beside[other].Count, other));
            }
        }
    }

    /// <summary>The nodes in the order they are eliminated.</summary>
    public int[] Nodes { get; }

    /// <summary>For each node those that it is coupled to when it is eliminated.</summary>
    public int[][] Later { get; }
}
