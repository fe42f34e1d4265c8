using InfusionSim.Cli.Answers;
using InfusionSim.Cli.Client;
using InfusionSim.Cli.Plans;
using InfusionSim.Plots;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Cli.Pictures;

/// <summary>Draws a picture of an answer and saves it, asking the service for the moments that it needs.</summary>
public static class PictureDrawing
{
    private const int StripMoments = 8;
    private const int AnimationMoments = 24;
    private const int ProgressMoments = 60;

    /// <summary>The picture of the front.</summary>
    /// <param name="answer">The answer, with its front map.</param>
    public static Picture Front(PlanAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        return Plots.Front.Draw(answer.Plan, answer.Response);
    }

    /// <summary>The fronts of several answers side by side.</summary>
    /// <param name="answers">The answers, with their front maps.</param>
    public static Picture SideBySide(IReadOnlyList<PlanAnswer> answers) =>
        Plots.Comparison.Draw([.. answers.Select(answer => (answer.Plan, answer.Response))]);

    /// <summary>Draws and saves a picture.</summary>
    /// <param name="kind">Which picture.</param>
    /// <param name="client">The service.</param>
    /// <param name="answer">The answer, with its front map.</param>
    /// <param name="timeS">Moment of the pressure picture [s]; null for half way.</param>
    /// <param name="file">Where it goes.</param>
    /// <param name="cancellation">Stops the drawing.</param>
    /// <returns>What the picture says, in a sentence.</returns>
    public static async Task<string> SaveAsync(
        PictureKind kind, FillClient client, PlanAnswer answer, double? timeS, string file, CancellationToken cancellation)
    {
        ArgumentNullException.ThrowIfNull(client);
        ArgumentNullException.ThrowIfNull(answer);
        if (kind == PictureKind.Animation)
        {
            AnimatedPicture moving = Animation.Draw(answer.Plan, answer.Response, await MomentsAsync(client, answer, AnimationMoments, cancellation));
            FileWriter.Try(file, () => moving.Save(file));
            return moving.Sentence;
        }

        Picture still = kind switch
        {
            PictureKind.Front => Front(answer),
            PictureKind.ToolSide => Plots.Front.Draw(answer.Plan, answer.Response, PanelFace.ToolSide),
            PictureKind.BothSides => BothSides.Draw(answer.Plan, answer.Response),
            PictureKind.Lag => LagMap.Draw(answer.Plan, answer.Response),
            PictureKind.Lines => LinePressure.Draw(answer.Plan, answer.Response),
            PictureKind.Speed => Quality.DrawSpeed(answer.Plan, answer.Response),
            PictureKind.Capillary => Quality.DrawCapillaryNumber(answer.Plan, answer.Response),
            PictureKind.GelMargin => Quality.DrawGelMargin(answer.Plan, answer.Response),
            PictureKind.Strip => Strip.Draw(answer.Plan, answer.Response, await MomentsAsync(client, answer, StripMoments, cancellation)),
            PictureKind.Progress => WetShare.Draw(answer.Plan, answer.Response, await MomentsAsync(client, answer, ProgressMoments, cancellation)),
            _ => Pressure.Draw(answer.Plan, answer.Response, await PressureAsync(client, answer, timeS ?? answer.Forecast.EndTimeS / 2, cancellation)),
        };
        FileWriter.Try(file, () => still.Save(file));
        return still.Sentence;
    }

    private static Task<List<FillMoment>> MomentsAsync(FillClient client, PlanAnswer answer, int count, CancellationToken cancellation) =>
        WatchAsync(client, answer, new WatchFillRequest { Plan = answer.Plan, Moments = count }, cancellation);

    private static async Task<FillMoment> PressureAsync(FillClient client, PlanAnswer answer, double timeS, CancellationToken cancellation)
    {
        WatchFillRequest request = new() { Plan = answer.Plan, AtTimeS = { timeS }, WithPressure = true };
        return (await WatchAsync(client, answer, request, cancellation))[0];
    }

    private static async Task<List<FillMoment>> WatchAsync(FillClient client, PlanAnswer answer, WatchFillRequest request, CancellationToken cancellation)
    {
        List<FillMoment> moments = [];
        await client.WatchAsync(
            request, answer.Name, step =>
            {
                if (step.Moment is FillMoment moment) moments.Add(moment);
            },
            cancellation);
        return moments;
    }
}
