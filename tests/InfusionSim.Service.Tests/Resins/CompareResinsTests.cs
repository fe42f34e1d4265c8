using System.Text;
using System.Text.Json;
using Grpc.Core;
using Grpc.Net.Client;
using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.V1;
using InfusionSim.Service.Hosting;
using InfusionSim.Service.Tests.Fills;

namespace InfusionSim.Service.Tests.Resins;

/// <summary>Several resins go in over the wire, what each does comes back.</summary>
public sealed class CompareResinsTests
{
    private static readonly Resin Quick = new() { ViscosityPaS = 0.1, GelTimeMin = 26, MixToOpenMin = 6, DensityKgPerM3 = 1100 };

    private static readonly Resin Calm = new() { ViscosityPaS = 0.2, GelTimeMin = 120, MixToOpenMin = 6, DensityKgPerM3 = 1000 };

    private static CompareResinsRequest Request(params Resin[] cards) =>
        new() { Plan = StraightStrip.With(plan => plan.Resolution.CellMm = 20), Cards = { cards } };

    private static async Task<CompareResinsResponse> AskAsync(CompareResinsRequest request)
    {
        await using ServiceHost host = await ServiceHost.StartAsync(ServiceOptions.Embedded);
        using GrpcChannel channel = GrpcChannel.ForAddress(host.GrpcAddress);
        return await new ResinService.ResinServiceClient(channel).CompareResinsAsync(request);
    }

    private static async Task<(int Code, JsonDocument Answer)> PostAsync(string body)
    {
        await using ServiceHost host = await ServiceHost.StartAsync(ServiceOptions.Embedded);
        using HttpClient client = new() { BaseAddress = host.HttpAddress };
        using StringContent content = new(body, Encoding.UTF8, "application/json");
        using HttpResponseMessage response = await client.PostAsync(new Uri("/v1/resins:compare", UriKind.Relative), content);
        return ((int)response.StatusCode, JsonDocument.Parse(await response.Content.ReadAsStringAsync()));
    }

    [Fact]
    public async Task CompareResins_StraightStrip_AnswersTheClosedFormForEach()
    {
        CompareResinsResponse answer = await AskAsync(Request(Quick, Calm));

        // φ μ L² / (2 K Δp) = 900 s with 0.1 Pa·s, 1800 s with 0.2 Pa·s (Darcy's law with a sharp front, derived).
        answer.Resins.Select(resin => resin.Forecast.FillTimeS).ShouldBe([900, 1800], 1e-3);
        answer.Resins.ShouldAllBe(resin => resin.SharesFlow && resin.FlowAgainBecause.Length == 0);
        answer.Resins.Select(resin => resin.Forecast.GelMarginRatio).ShouldBe([4.0 / 3, 3.8], 1e-4);
        // 360 cm³ of pores, 15 % on top, 100 g left in the pot (the defaults of mix).
        answer.Resins.Select(resin => resin.ResinToMixG).ShouldBe([396 * 1.15 + 100, 360 * 1.15 + 100], 1e-3);
        answer.Resins.Select(resin => resin.Card.ViscosityPaS).ShouldBe([0.1, 0.2]);
        answer.Answer.Select(line => line.Label).ShouldBe(["Best", "Flow"]);
    }

    [Fact]
    public async Task CompareResins_Curves_AreBoundedAndEndAtGel()
    {
        CompareResinsResponse answer = await AskAsync(Request(Quick, Calm));

        foreach (ResinOnPlan resin in answer.Resins)
        {
            resin.Curve.Count.ShouldBeInRange(50, 200);
            resin.Curve.Select(point => point.TimeS).ShouldBe(resin.Curve.Select(point => point.TimeS).Order());
            resin.Curve.ShouldAllBe(point => point.ViscosityPaS == resin.ViscosityAtOpeningPaS);
        }

        answer.Resins[0].Curve[^1].TimeS.ShouldBe(1200, 1e-3);
        answer.Resins[0].Curve[^1].DriveRatio.ShouldBe(4.0 / 3, 1e-4);
    }

    [Fact]
    public async Task CompareResins_GoalThatOneMisses_NamesTheOther()
    {
        CompareResinsRequest request = Request(Quick, Calm);
        request.Plan.Goals = new Goals { SmallestGelMarginRatio = 2 };

        CompareResinsResponse answer = await AskAsync(request);

        (answer.HasBestIndex, answer.BestIndex).ShouldBe((true, 1));
        answer.Answer[0].Text.ShouldStartWith("Resin2, the only one that meets the goals: full 30 min after opening");
    }

    [Fact]
    public async Task CompareResins_BadCard_IsRefusedWithItsPlace()
    {
        Resin bad = Calm.Clone();
        bad.ViscosityPaS = double.NaN;

        RpcException refusal = await Should.ThrowAsync<RpcException>(() => AskAsync(Request(Quick, bad)));

        refusal.StatusCode.ShouldBe(StatusCode.InvalidArgument);
        FaultStatus.Read(refusal).Select(fault => fault.Path).ShouldBe(["cards[1].viscosityPaS"]);
    }

    [Fact]
    public async Task CompareResins_OverJson_AnswersAndRefusesAlike()
    {
        const string Card = """{ "viscosityPaS": 0.2, "gelTimeMin": 60, "densityKgPerM3": 1100 }""";
        string plan = StraightStrip.Json.Replace("\"cellMm\": 5", "\"cellMm\": 20", StringComparison.Ordinal);

        (int code, JsonDocument answer) = await PostAsync($$"""{ "plan": {{plan}}, "cards": [ {{Card}} ] }""");
        (int refused, JsonDocument refusal) = await PostAsync($$"""{ "plan": {{plan}}, "cards": [ {{Card}}, {{Card.Replace("viscosityPaS", "viskosityPaS", StringComparison.Ordinal)}} ] }""");

        code.ShouldBe(200);
        answer.RootElement.GetProperty("resins")[0].GetProperty("forecast").GetProperty("fillTimeS").GetDouble().ShouldBe(1800, 1e-3);
        refused.ShouldBe(400);
        refusal.RootElement.ToString().ShouldContain("cards[1].viskosityPaS");
        refusal.RootElement.ToString().ShouldContain("cards[1].viscosityPaS");
    }
}
