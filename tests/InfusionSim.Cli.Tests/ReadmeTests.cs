using System.Text.RegularExpressions;
using InfusionSim.Cli.Commands;
using InfusionSim.Cli.Settings;
using InfusionSim.Protocol.Plans;

namespace InfusionSim.Cli.Tests;

/// <summary>What the README promises works as it stands.</summary>
public sealed partial class ReadmeTests
{
    private static readonly string Readme = RepositoryFiles.Text("README.md");

    [Fact]
    public async Task Plan_CopiedFromTheReadme_AnswersAsTheReadmeShows()
    {
        using CommandSession session = new();
        session.Write("strip.json", JsonBlock().Match(Readme).Groups["text"].Value);
        string shown = AnswerBlock().Match(Readme).Groups["text"].Value;

        (await session.RunAsync("fill strip.json")).ShouldBe(ExitCodes.Done, session.Error);

        session.Output.Replace(session.PathOf("strip.json"), "strip.json", StringComparison.Ordinal).TrimEnd().ShouldBe(shown.TrimEnd());
    }

    [Fact]
    public async Task Mix_OfThePlanInTheReadme_AnswersAsTheReadmeShows()
    {
        using CommandSession session = new();
        session.Write("strip.json", JsonBlock().Match(Readme).Groups["text"].Value);
        Match shown = MixBlock().Match(Readme);

        (await session.RunAsync(shown.Groups["line"].Value)).ShouldBe(ExitCodes.Done, session.Error);

        session.Output.ShouldStartWith(shown.Groups["text"].Value);
    }

    [Fact]
    public async Task Resins_CardsOfTheGallery_AnswerAsTheReadmeShows()
    {
        using CommandSession session = new();
        string[] cards = ["calm-epoxy.json", "hasty-polyester.json", "quick-epoxy.json", "thin-vinyl-ester.json"];
        session.Write("plan.json", RepositoryFiles.Text("plots/gallery/plans/hatch-cover-2.json"));
        foreach (string card in cards) session.Write(card, RepositoryFiles.Text($"plots/gallery/resins/{card}"));
        string shown = ResinBlock().Match(Readme).Groups["text"].Value;

        (await session.RunAsync($"resins plan.json {string.Join(' ', cards)}")).ShouldBe(ExitCodes.Done, session.Error);

        session.Output.ShouldStartWith(shown + "\n");
    }

    [Fact]
    public void Commands_OfTheFirstQuarter_NameOnlyFilesThatAreThere()
    {
        List<string> written = [];
        foreach (string line in QuarterBlock().Match(Readme).Groups["text"].Value.Split('\n'))
        {
            string[] words = line.Split('#')[0].Split(' ', StringSplitOptions.RemoveEmptyEntries);
            if (Array.IndexOf(words, "-o") is > 0 and int at) written.Add(words[at + 1]);
            foreach (string file in words.Where(word => word.EndsWith(".json", StringComparison.Ordinal) && !written.Contains(word)))
                RepositoryFiles.Text(file).ShouldNotBeEmpty(line);
        }

        written.ShouldContain("plate.json");
    }

    [Fact]
    public void Table_OfThePlan_NamesEveryKey()
    {
        IEnumerable<string> keys = PlanKeys.All.Select(path => path[(path.LastIndexOf('.') + 1)..].Replace("[0]", "", StringComparison.Ordinal)).Distinct();

        keys.Where(key => !Readme.Contains(key, StringComparison.Ordinal)).ShouldBeEmpty();
    }

    [Theory]
    [InlineData("permeabilityFactor", "Preform", "permeability_factor")]
    [InlineData("thicknessMm", "Zone", "thickness_mm")]
    [InlineData("porosity", "Zone", "porosity")]
    [InlineData("fibreVolumeFraction", "Zone", "fibre_volume_fraction")]
    [InlineData("k1M2", "Permeability", "k1_m2")]
    [InlineData("k3M2", "Permeability", "k3_m2")]
    [InlineData("contactWidthMm", "Feed", "contact_width_mm")]
    [InlineData("viscosityPaS", "Resin", "viscosity_pa_s")]
    [InlineData("gelTimeMin", "Resin", "gel_time_min")]
    [InlineData("mixToOpenMin", "Resin", "mix_to_open_min")]
    [InlineData("densityKgPerM3", "Resin", "density_kg_per_m3")]
    [InlineData("resin.surfaceTensionMnPerM", "Resin", "surface_tension_mn_per_m")]
    [InlineData("resin.contactAngleDeg", "Resin", "contact_angle_deg")]
    [InlineData("pressureMbarAbs", "Bag", "pressure_mbar_abs")]
    [InlineData("ambientMbarAbs", "Bag", "ambient_mbar_abs")]
    [InlineData("…volatiles[].moleFraction", "ResinVolatile", "mole_fraction")]
    [InlineData("…vents[].openFraction", "Vent", "open_fraction")]
    [InlineData("…clampSteps[].openFraction", "ClampStep", "open_fraction")]
    [InlineData("a moment: `atMin", "Moment", "at_min")]
    [InlineData("…pots[].massG", "Pot", "mass_g")]
    [InlineData("bag.steps[].pressureMbarAbs", "BagStep", "pressure_mbar_abs")]
    [InlineData("shop.temperatureDegC", "Shop", "temperature_deg_c")]
    [InlineData("shop.altitudeM", "Shop", "altitude_m")]
    [InlineData("bag.leakMbarLPerS", "Bag", "leak_mbar_l_per_s")]
    [InlineData("bag.dropTest.riseMbar", "DropTest", "rise_mbar")]
    [InlineData("bag.dropTest.minutes", "DropTest", "minutes")]
    [InlineData("bag.dropTest.volumeL", "DropTest", "volume_l")]
    [InlineData("bag.pump.speedM3PerH", "Pump", "speed_m3_per_h")]
    [InlineData("bag.pump.lowestMbarAbs", "Pump", "lowest_mbar_abs")]
    [InlineData("largestDrySpotMm2", "Goals", "largest_dry_spot_mm2")]
    [InlineData("smallestGelMarginRatio", "Goals", "smallest_gel_margin_ratio")]
    [InlineData("mostResinOutCm3", "Goals", "most_resin_out_cm3")]
    [InlineData("cellMm", "Resolution", "cell_mm")]
    [InlineData("subLayers", "Resolution", "sub_layers")]
    [InlineData("permeability.angleDeg", "Permeability", "angle_deg")]
    [InlineData("…plies[].count", "Ply", "count")]
    [InlineData("…plies[].angleDeg", "Ply", "angle_deg")]
    [InlineData("…plies[].thicknessMm", "Ply", "thickness_mm")]
    [InlineData("…plies[].arealWeightGPerM2", "Ply", "areal_weight_g_per_m2")]
    [InlineData("…plies[].fibreDensityKgPerM3", "Ply", "fibre_density_kg_per_m3")]
    [InlineData("resin.mixRatio.partsByMass", "MixRatio", "parts_by_mass")]
    [InlineData(".mixRatio.partsByVolume", "MixRatio", "parts_by_volume")]
    [InlineData(".mixRatio.resinDensityKgPerM3", "MixRatio", "resin_density_kg_per_m3")]
    [InlineData(".mixRatio.hardenerDensityKgPerM3", "MixRatio", "hardener_density_kg_per_m3")]
    [InlineData("mix.reserveFraction", "Mix", "reserve_fraction")]
    [InlineData("mix.potRestG", "Mix", "pot_rest_g")]
    [InlineData("mix.largestBatchG", "Mix", "largest_batch_g")]
    [InlineData("mix.ventsOpenAfterMin", "Mix", "vents_open_after_min")]
    [InlineData("mix.potCoolingWPerK", "Mix", "pot_cooling_w_per_k")]
    [InlineData("mix.warmestPotDegC", "Mix", "warmest_pot_deg_c")]
    [InlineData("…feeds[].boreMm", "Feed", "bore_mm")]
    [InlineData("…vents[].boreMm", "Vent", "bore_mm")]
    [InlineData("…hose.boreMm", "Hose", "bore_mm")]
    [InlineData("…hose.lengthM", "Hose", "length_m")]
    [InlineData("…pots[].levelMm", "Pot", "level_mm")]
    [InlineData("…flowMeshes[].thicknessMm", "FlowMesh", "thickness_mm")]
    [InlineData("…flowMeshes[].porosity", "FlowMesh", "porosity")]
    [InlineData("peelPly.thicknessMm", "PeelPly", "thickness_mm")]
    [InlineData("…cores[].toolSkinFraction", "Core", "tool_skin_fraction")]
    [InlineData("…cores[].thicknessMm", "Core", "thickness_mm")]
    [InlineData("…cores[].porosity", "Core", "porosity")]
    [InlineData("…grooves.widthMm", "Grooves", "width_mm")]
    [InlineData("…grooves.pitchMm", "Grooves", "pitch_mm")]
    [InlineData("…holes.diameterMm", "Holes", "diameter_mm")]
    [InlineData("…gaps[].widthMm", "Gap", "width_mm")]
    [InlineData("…gaps[].heightMm", "Gap", "height_mm")]
    [InlineData("slope.uphillDeg", "Slope", "uphill_deg")]
    [InlineData("slope.angleDeg", "Slope", "angle_deg")]
    public void Table_OfThePlan_NamesTheRangeThatIsChecked(string key, string message, string field)
    {
        NumberRule rule = NumberRules.Of(Protocol.V1.PlanReflection.Descriptor.FindTypeByName<Google.Protobuf.Reflection.MessageDescriptor>(message).FindFieldByName(field));
        string row = Readme.Split('\n').First(line => line.StartsWith('|') && line.Contains($"{key}`", StringComparison.Ordinal));
        string range = row.Split('|')[4].Replace(",", "", StringComparison.Ordinal);

        range.ShouldContain($"{Protocol.Units.Numbers.Say(rule.Least)} to {Say(rule.Most)}");
    }

    // 1e9 is how a person writes it.
    private static string Say(double value) => value >= 1e7 ? value.ToString("0.#####e0", System.Globalization.CultureInfo.InvariantCulture) : Protocol.Units.Numbers.Say(value);

    [GeneratedRegex("```json\n(?<text>.*?)```", RegexOptions.Singleline)]
    private static partial Regex JsonBlock();

    [GeneratedRegex("`infusionsim (?<line>mix [^`]*)` answers[^`]*```\n(?<text>MIX .*?)```", RegexOptions.Singleline)]
    private static partial Regex MixBlock();

    [GeneratedRegex("```\n(?<text> +Outcome .*?)```", RegexOptions.Singleline)]
    private static partial Regex ResinBlock();

    [GeneratedRegex(@"## First quarter of an hour\s+```\n(?<text>.*?)```", RegexOptions.Singleline)]
    private static partial Regex QuarterBlock();

    [GeneratedRegex("```\n(?<text>FILLS .*?)```", RegexOptions.Singleline)]
    private static partial Regex AnswerBlock();
}
