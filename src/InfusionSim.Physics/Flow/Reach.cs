namespace InfusionSim.Physics.Flow;

/// <summary>Which cells a feed can reach through open faces; a feed line or vent line across the panel is a barrier.</summary>
internal static class Reach
{
    /// <summary>Marks the cells that are joined to a feed. [rows × columns], x fastest.</summary>
    /// <param name="problem">Conductances and contacts.</param>
    public static bool[] From(FillProblem problem)
    {
        int columns = problem.Operator.Columns, count = problem.Operator.CellCount;
        double[] east = problem.Operator.East, north = problem.Operator.North;
        bool[] reached = new bool[count];
        Stack<int> open = new();
        for (int feed = 0; feed < problem.Feeds.Count; feed++)
        {
            if (problem.FeedPressures[feed] <= 0) continue;
            foreach (var contact in problem.Feeds[feed].Contacts) Visit(contact.Cell);
        }

        while (open.TryPop(out int cell))
        {
            if (east[cell] > 0) Visit(cell + 1);
            if (cell % columns > 0 && east[cell - 1] > 0) Visit(cell - 1);
            if (north[cell] > 0) Visit(cell + columns);
            if (cell >= columns && north[cell - columns] > 0) Visit(cell - columns);
        }

        return reached;

        void Visit(int cell)
        {
            if (reached[cell] || problem.PoreVolume[cell] <= 0) return;
            reached[cell] = true;
            open.Push(cell);
        }
    }
}
