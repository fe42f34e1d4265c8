using System.Globalization;
using System.Text;
using InfusionSim.Plots;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Gallery.Pictures;

/// <summary>Decides which pictures hang in the gallery and draws them.</summary>
internal static class Hanging
{
    private const string FirstPlan = "hatch-cover-1";
    private const string SecondPlan = "hatch-cover-2";
    private const string MeshPlan = "hatch-cover-mesh";
    private const string LinePlan = "sled-runner-line";

    /// <summary>Draws every file from the plans of a folder.</summary>
    internal static async Task<IReadOnlyList<HungFile>> DrawAllAsync(string plans)
    {
        var answers = await Asking.AskAllAsync(plans);
        var files = new List<HungFile>();
        foreach (var answer in answers)
        {
            files.AddRange(Still($"{answer.Name}-front", Front.Draw(answer.Plan, answer.Response)));
        }

        var first = answers.Single(answer => answer.Name == FirstPlan);
        var second = answers.Single(answer => answer.Name == SecondPlan);
        files.AddRange(Still("hatch-cover-compare", Comparison.Draw([(first.Plan, first.Response), (second.Plan, second.Response)])));
        files.AddRange(Still($"{second.Name}-pressure", Pressure.Draw(second.Plan, second.Response, second.Moments[Asking.Moments / 4])));
        files.AddRange(Still($"{second.Name}-wet-share", WetShare.Draw(second.Plan, second.Response, second.Moments)));
        files.AddRange(Still($"{first.Name}-strip", Strip.Draw(first.Plan, first.Response, first.Every(Asking.Moments / 8))));
        var moving = Animation.Draw(first.Plan, first.Response, first.Moments);
        files.Add(new HungFile($"{first.Name}-moving.webp", moving.WebpBytes(), moving.Sentence));
        files.AddRange(Sides(answers.Single(answer => answer.Name == MeshPlan)));
        var line = answers.Single(answer => answer.Name == LinePlan);
        files.AddRange(Still($"{line.Name}-lines", LinePressure.Draw(line.Plan, line.Response)));
        var resins = await Asking.CompareAsync(second.Plan, System.IO.Path.Combine(plans, "..", "resins"));
        files.AddRange(Still($"{second.Name}-resins", ResinCurves.Draw(second.Plan, resins)));
        files.AddRange(Still($"{second.Name}-speed", Quality.DrawSpeed(second.Plan, second.Response)));
        files.AddRange(Still($"{second.Name}-capillary", Quality.DrawCapillaryNumber(second.Plan, second.Response)));
        files.AddRange(Still($"{second.Name}-gel-margin", Quality.DrawGelMargin(second.Plan, second.Response)));
        files.Add(new HungFile("README.md", Encoding.UTF8.GetBytes(Catalogue(answers, files)), ""));
        return files;
    }

    private static IEnumerable<HungFile> Sides(Answered mesh) =>
    [
        .. Still($"{mesh.Name}-tool-side", Front.Draw(mesh.Plan, mesh.Response, PanelFace.ToolSide)),
        .. Still($"{mesh.Name}-both-sides", BothSides.Draw(mesh.Plan, mesh.Response)),
        .. Still($"{mesh.Name}-lag", LagMap.Draw(mesh.Plan, mesh.Response)),
    ];

    private static IEnumerable<HungFile> Still(string name, Picture picture) =>
        [new HungFile($"{name}.png", picture.PngBytes(), picture.Sentence), new HungFile($"{name}.svg", picture.SvgBytes(), picture.Sentence)];

    private static string Catalogue(IReadOnlyList<Answered> answers, List<HungFile> files)
    {
        var text = new StringBuilder("# Gallery\n\nDrawn from the forecasts of the plans in `plans/`. Remake all files from the top of the project:\n\n"
            + "```\ndotnet run -c Release --project plots/InfusionSim.Gallery\n```\n");
        var shown = files.Where(file => !file.Name.EndsWith(".svg", StringComparison.Ordinal)).ToList();
        foreach (var answer in answers)
        {
            text.Append(CultureInfo.InvariantCulture, $"\n## {answer.Plan.Title}\n\n[The plan](plans/{answer.Name}.json)\n");
            Append(text, shown.Where(file => file.Name.StartsWith(answer.Name + "-", StringComparison.Ordinal)));
        }

        text.Append("\n## Side by side\n");
        Append(text, shown.Where(file => !answers.Any(answer => file.Name.StartsWith(answer.Name + "-", StringComparison.Ordinal))));
        return text.ToString();
    }

    private static void Append(StringBuilder text, IEnumerable<HungFile> files)
    {
        foreach (var file in files)
        {
            text.Append(CultureInfo.InvariantCulture, $"\n![{file.Sentence}]({file.Name})\n");
        }
    }
}
