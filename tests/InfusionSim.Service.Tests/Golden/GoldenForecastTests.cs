using System.Text.Json;
using InfusionSim.Service.Hosting;
using InfusionSim.Service.Tests.Fills;

namespace InfusionSim.Service.Tests.Golden;

/// <summary>The example plan goes into the real service as JSON; what comes back is the closed form of the strip, key by key.</summary>
public sealed class GoldenForecastTests
{
    /// <summary>In the expected forecast: any text, but some.</summary>
    private const string AnyText = "…";

    [Fact]
    public async Task PredictFill_ExamplePlanAsJson_AnswersTheExampleForecast()
    {
        await using ServiceHost host = await ServiceHost.StartAsync(ServiceOptions.Embedded);
        using var client = new HttpClient { BaseAddress = host.HttpAddress };
        using HttpResponseMessage response = await client.PostAsync(
            new Uri("/v1/fills:predict", UriKind.Relative), StraightStrip.Request(Text("strip-plan.json")));
        string answer = await response.Content.ReadAsStringAsync();
        response.IsSuccessStatusCode.ShouldBeTrue(answer);

        using JsonDocument observed = JsonDocument.Parse(answer), expected = JsonDocument.Parse(Text("strip-forecast.json"));

        ShouldAgree(observed.RootElement.GetProperty("forecast"), expected.RootElement, "forecast");
    }

    private static void ShouldAgree(JsonElement observed, JsonElement expected, string path)
    {
        observed.ValueKind.ShouldBe(expected.ValueKind, path);
        switch (expected.ValueKind)
        {
            case JsonValueKind.Object:
                Keys(observed).ShouldBe(Keys(expected), ignoreOrder: true, path);
                foreach (JsonProperty one in expected.EnumerateObject()) ShouldAgree(observed.GetProperty(one.Name), one.Value, $"{path}.{one.Name}");
                break;
            case JsonValueKind.Array:
                observed.GetArrayLength().ShouldBe(expected.GetArrayLength(), path);
                for (int k = 0; k < expected.GetArrayLength(); k++) ShouldAgree(observed[k], expected[k], $"{path}[{k}]");
                break;
            case JsonValueKind.Number:
                double value = expected.GetDouble();
                Math.Abs(observed.GetDouble() - value).ShouldBeLessThanOrEqualTo(Allowed(path, value), path);
                break;
            case JsonValueKind.String when expected.GetString() == AnyText:
                observed.GetString().ShouldNotBeNullOrWhiteSpace(path);
                break;
            default:
                observed.GetRawText().ShouldBe(expected.GetRawText(), path);
                break;
        }
    }

    private static double Allowed(string path, double expected) => path switch
    {
        "forecast.massBalanceErrorRatio" => 1e-9,
        "forecast.numericalErrorRatio" => 1e-6,
        // A mark is passed between two computed states; its arrival is interpolated.
        "forecast.timingMarks[0].arrivalTimeS" => 1e-3 * expected,
        // One part in a million of the resin in stands for the relative error of what must be nothing.
        "forecast.vents[0].resinOutCm3" => 1e-6 * 360,
        "forecast.vents[0].resinOutG" => 1e-6 * 396,
        // Quality numbers are read from arrivals, which are interpolated.
        _ when path.StartsWith("forecast.quality.front", StringComparison.Ordinal) || path.StartsWith(
            "forecast.quality.smallestGelMarginFraction", StringComparison.Ordinal) => 5e-3 * expected,
        _ => 1e-6 * Math.Abs(expected),
    };

    private static string[] Keys(JsonElement element) => [.. element.EnumerateObject().Select(one => one.Name)];

    private static string Text(string file) => File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Golden", file));
}
