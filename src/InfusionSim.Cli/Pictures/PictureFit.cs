using InfusionSim.Cli.Answers;
using InfusionSim.Cli.Commands;

namespace InfusionSim.Cli.Pictures;

/// <summary>Refuses a picture of something that a panel does not have.</summary>
public static class PictureFit
{
    /// <summary>Refuses a tool side of a panel with one layer, and lines without bore and hose.</summary>
    /// <param name="kind">The picture.</param>
    /// <param name="answer">The answer it would be drawn from.</param>
    /// <exception cref="CommandException">When there is nothing to draw.</exception>
    public static void Check(PictureKind kind, PlanAnswer answer)
    {
        ArgumentNullException.ThrowIfNull(answer);
        if (kind is PictureKind.ToolSide or PictureKind.BothSides or PictureKind.Lag && answer.Response.FrontMap?.ToolSide is null)
            throw Refusal(kind, $"{answer.Name} has one layer, so that its tool side fills with its bag side. Give it a flow mesh, a core, peel ply or resolution.subLayers.");
        if (kind == PictureKind.Capillary && !answer.Plan.Resin.HasSurfaceTensionMnPerM)
            throw Refusal(kind, $"{answer.Name} does not tell the surface tension of its resin. Give resin.surfaceTensionMnPerM, 25 to 50 for most resins, and resin.contactAngleDeg where it is known.");
        if (kind == PictureKind.Lines && answer.Forecast.Feeds.All(feed => feed.Line is null) && answer.Forecast.Vents.All(vent => vent.Line is null))
            throw Refusal(kind, $"no line of {answer.Name} has a bore or a hose with resin in it, so that each has the same pressure all along. Give feeds[].boreMm or feeds[].hose.");
    }

    /// <summary>Whether a picture is drawn from the quality numbers of every square.</summary>
    /// <param name="kind">The picture.</param>
    public static bool NeedsQuality(PictureKind kind) => kind is PictureKind.Speed or PictureKind.Capillary or PictureKind.GelMargin;

    private static CommandException Refusal(PictureKind kind, string why) => new(ExitCodes.BadInput, $"--picture {PictureNames.Of(kind)}: {why}");
}
