using InfusionSim.Physics.Flow;
using InfusionSim.Physics.Forecasts;
using InfusionSim.Protocol.Forecasts;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.Requests;
using InfusionSim.Protocol.V1;
using FillMoment = InfusionSim.Protocol.V1.FillMoment;

namespace InfusionSim.Service.Fills;

/// <summary>Shows a fill to a watcher: how far the computation is, then the moments in order of time, the forecast last.</summary>
internal sealed class WatchedFill(IFillForecaster forecaster, ForecastDesk desk, FillInputs inputs, IReadOnlyList<string> warnings)
{
    // Ten times a second is as fast as a bar on a screen needs.
    private static readonly TimeSpan ProgressPause = TimeSpan.FromMilliseconds(100);

    /// <summary>Computes and shows the fill.</summary>
    public async Task RunAsync(WatchFillRequest request, Watcher watcher, CancellationToken cancellation)
    {
        Forecast forecast = await PredictAsync(watcher, cancellation);
        foreach (double time in TimesOf(request, forecast.EndTime))
        {
            // A core is held while a moment is computed, not while the watcher reads it.
            FillMoment moment = await desk.RunAsync(stop => MomentAt(forecast, time, request.WithPressure, stop), cancellation);
            await watcher.SendAsync(new WatchFillResponse { Moment = moment }, cancellation);
        }

        PredictFillResponse answer = FillAnswer.Of(forecast, inputs, warnings, withFrontMap: true, request.WithQualityMaps);
        await watcher.SendAsync(new WatchFillResponse { Forecast = answer }, cancellation);
    }

    /// <summary>The times to show [s], rising; none beyond the end.</summary>
    internal static IReadOnlyList<double> TimesOf(WatchFillRequest request, double end)
    {
        if (request.AtTimeS.Count > 0) return [.. request.AtTimeS.Select(time => Math.Min(time, end)).Order()];
        int count = request.HasMoments ? request.Moments : RequestLimits.UsualMoments;
        return [.. Enumerable.Range(1, count).Select(k => k == count ? end : end * k / count)];
    }

    private async Task<Forecast> PredictAsync(Watcher watcher, CancellationToken cancellation)
    {
        using var giveUp = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        var progress = new LatestProgress();
        Task<Forecast> prediction = ComputeAsync(progress, giveUp.Token);
        try
        {
            await foreach (ForecastProgress step in progress.ReadAllAsync(cancellation))
            {
                await watcher.SendAsync(new WatchFillResponse { Progress = ToContract(step) }, cancellation);
                await Task.WhenAny(prediction, Task.Delay(ProgressPause, cancellation));
            }

            return await prediction;
        }
        catch
        {
            // When the watcher is gone the work must not go on, and its core must be free before the call ends.
            await giveUp.CancelAsync();
            await prediction.ContinueWith(_ => { }, CancellationToken.None, TaskContinuationOptions.ExecuteSynchronously, TaskScheduler.Default);
            throw;
        }
    }

    private async Task<Forecast> ComputeAsync(LatestProgress progress, CancellationToken cancellation)
    {
        try
        {
            return await desk.RunAsync(stop => forecaster.Predict(inputs, progress, stop), cancellation);
        }
        finally
        {
            progress.Close();
        }
    }

    private FillMoment MomentAt(Forecast forecast, double time, bool withPressure, CancellationToken cancellation)
    {
        FillState state = forecaster.StateAt(forecast, inputs, time, withPressure, cancellation);
        return FillMomentMapping.ToContract(state, time, forecast, inputs);
    }

    private static Progress ToContract(ForecastProgress step) => new()
    {
        DoneFraction = double.IsFinite(step.DoneFraction) ? Math.Clamp(step.DoneFraction, 0, 1) : 0,
        Stage = step.Stage ?? "",
    };
}
