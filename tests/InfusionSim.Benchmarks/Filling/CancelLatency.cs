using System.Diagnostics;
using InfusionSim.Physics.Clock;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Physics.Panels;
using InfusionSim.Physics.Resins;

namespace InfusionSim.Benchmarks.Filling;

/// <summary>How long a forecast goes on after it has been cancelled.</summary>
internal static class CancelLatency
{
    private const int Tries = 24;

    private static readonly Resin Thin = new(viscosity: 0.2, gelTime: 7200, mixToOpen: 360, density: 1100);

    private static readonly Bag Tight = new(Pressure: 1325, Ambient: 101325);

    /// <summary>Cancels forecasts at drawn moments and prints the longest wait.</summary>
    /// <param name="output">Where to.</param>
    public static void Print(TextWriter output)
    {
        output.WriteLine($"From cancelling a forecast to its end, {Tries} drawn moments each");
        Random random = new(20_231);
        foreach (int across in new[] { 141, 490, 980 })
        {
            Panel panel = BenchmarkPanel.Drawn(across);
            List<double> waits = [];
            for (int k = 0; k < Tries; k++)
            {
                using CancellationTokenSource source = new();
                Task<double> ended = Task.Run(() => EndOf(panel, source.Token));
                Thread.Sleep(random.Next(5, across * 3));
                double cancelled = Stopwatch.GetTimestamp();
                source.Cancel();
                if (ended.Result > cancelled) waits.Add((ended.Result - cancelled) * 1000 / Stopwatch.Frequency);
            }

            waits.Sort();
            output.WriteLine($"{across,5}²  median {waits[waits.Count / 2],5:F0} ms  longest {waits[^1],5:F0} ms of {waits.Count}");
        }
    }

    private static double EndOf(Panel panel, CancellationToken cancellation)
    {
        try
        {
            Forecaster.Predict(panel, Thin, Tight, new Goals(), 1.5, cancellation: cancellation);
        }
        catch (OperationCanceledException)
        {
            return Stopwatch.GetTimestamp();
        }

        return 0;
    }
}
