namespace InfusionSim.Physics.Flow;

/// <summary>What a state between two others is likely to be, for the solver to begin from; it never decides the answer.</summary>
/// <remarks>
/// A node that is full at both carries its accumulated pressure w along the cubic through both values and slopes, for the slope of w is the pressure.
/// One that fills in between begins at 0 when it is full and goes along the parabola that ends with the value and the slope it has after. Derived.
/// </remarks>
internal static class StateGuess
{
    /// <summary>Guesses a state.</summary>
    /// <param name="before">The panel before, with its pressures.</param>
    /// <param name="after">The panel after, with its pressures.</param>
    /// <param name="full">Drive clock at which each node that fills in between is full, roughly [-]. [nodes].</param>
    /// <param name="clock">Drive clock in between [-].</param>
    /// <returns>Accumulated pressure and pressure of each node [-]; 0 where it is not full. [nodes].</returns>
    public static (double[] Accumulated, double[] Pressure) Between(FillState before, FillState after, double[] full, double clock)
    {
        double[] first = before.AccumulatedPressure, second = after.AccumulatedPressure, firstRate = before.Pressure!, secondRate = after.Pressure!;
        double[] accumulated = new double[first.Length], pressure = new double[first.Length];
        double span = after.Clock - before.Clock, late = (clock - before.Clock) / span, early = 1 - late, left = after.Clock - clock;
        for (int node = 0; node < first.Length; node++)
        {
            if (!(second[node] > 0)) continue;
            if (first[node] > 0)
            {
                double bySlopes = span * late * early * (early * firstRate[node] - late * secondRate[node]);
                accumulated[node] = Math.Max(0, early * early * (1 + 2 * late) * first[node] + late * late * (1 + 2 * early) * second[node] + bySlopes);
                pressure[node] = early * firstRate[node] + late * secondRate[node];
                continue;
            }

            double since = after.Clock - Math.Clamp(full[node], before.Clock, after.Clock);
            if (left >= since) continue;
            double bend = (secondRate[node] * since - second[node]) / (since * since);
            accumulated[node] = Math.Max(0, second[node] - left * (secondRate[node] - bend * left));
            if (accumulated[node] > 0) pressure[node] = Math.Max(0, secondRate[node] - 2 * bend * left);
        }

        return (accumulated, pressure);
    }
}
