namespace InfusionSim.Protocol.Json;

/// <summary>Finds the known key that a misspelt one was most likely meant to be.</summary>
public static class NearestKey
{
    /// <summary>The nearest of the known keys, or null when none is near.</summary>
    /// <param name="key">What was written.</param>
    /// <param name="known">The keys there are.</param>
    public static string? Of(string key, IEnumerable<string> known)
    {
        ArgumentNullException.ThrowIfNull(key);
        ArgumentNullException.ThrowIfNull(known);
        if (key.Length > 60) return null;
        string? nearest = null;
        int best = int.MaxValue;
        foreach (string candidate in known)
        {
            int distance = DistanceBetween(key.ToUpperInvariant(), candidate.ToUpperInvariant());
            bool isStem = key.Length >= 3 && candidate.StartsWith(key, StringComparison.OrdinalIgnoreCase);
            if (isStem) distance = Math.Min(distance, 1);
            if (distance < best) (nearest, best) = (candidate, distance);
        }

        return nearest is not null && best <= Math.Max(1, Math.Max(key.Length, nearest.Length) / 3) ? nearest : null;
    }

    /// <summary>Least number of letters to insert, drop, change or swap with a neighbour [-].</summary>
    /// <remarks>Optimal string alignment. Source: Damerau, Communications of the ACM 7 (1964) 171 (from memory).</remarks>
    internal static int DistanceBetween(string a, string b)
    {
        var cost = new int[a.Length + 1, b.Length + 1];
        for (int i = 0; i <= a.Length; i++) cost[i, 0] = i;
        for (int j = 0; j <= b.Length; j++) cost[0, j] = j;
        for (int i = 1; i <= a.Length; i++)
        {
            for (int j = 1; j <= b.Length; j++)
            {
                int change = a[i - 1] == b[j - 1] ? 0 : 1;
                cost[i, j] = Math.Min(cost[i - 1, j - 1] + change, Math.Min(cost[i - 1, j], cost[i, j - 1]) + 1);
                bool swapped = i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1];
                if (swapped) cost[i, j] = Math.Min(cost[i, j], cost[i - 2, j - 2] + 1);
            }
        }

        return cost[a.Length, b.Length];
    }
}
