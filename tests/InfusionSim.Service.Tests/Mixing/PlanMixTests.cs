using Grpc.Core;
using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.V1;
using InfusionSim.Service.Hosting;
using InfusionSim.Service.Tests.Fills;
using InfusionSim.Service.Tests.Hosting;

namespace InfusionSim.Service.Tests.Mixing;

public sealed class PlanMixTests
{
    private static readonly Uri Route = new("/v1/mixes:plan", UriKind.Relative);

    [Fact]
    public async Task PlanMix_OverGrpcAndJson_AnswersTheSame()
    {
        await using RunningService service = await RunningService.StartAsync();

        PlanMixResponse grpc = await new MixService.MixServiceClient(service.Channel).PlanMixAsync(new PlanMixRequest { Plan = StraightStrip.Plan() });
        using HttpResponseMessage json = await service.Json.PostAsync(Route, StraightStrip.Request(StraightStrip.Json));
        string text = await json.Content.ReadAsStringAsync();

        grpc.Sheet.InPartG.ShouldBe(396, 1e-6);
        grpc.Sheet.All.MixedG.ShouldBe(396 * 1.15 + 100, 1e-6);
        grpc.Answer[0].Label.ShouldBe("MIX");
        grpc.Plan.Mix.ReserveFraction.ShouldBe(0.15);
        grpc.Forecast.FillTimeS.ShouldBe(1800);
        json.IsSuccessStatusCode.ShouldBeTrue(text);
        PlanMixResponse.Parser.ParseJson(text).ShouldBe(grpc);
    }

    [Fact]
    public async Task PlanMix_ThroughThePhysics_IsTheSumByHand()
    {
        await using ServiceHost host = await ServiceHost.StartAsync(ServiceOptions.Embedded);
        using var client = new HttpClient { BaseAddress = host.HttpAddress };

        using HttpResponseMessage response = await client.PostAsync(Route, StraightStrip.Request(StraightStrip.Json.Replace(
            "\"densityKgPerM3\": 1100", "\"densityKgPerM3\": 1100, \"mixRatio\": {\"partsByMass\": 25}", StringComparison.Ordinal)));
        MixSheet sheet = PlanMixResponse.Parser.ParseJson(await response.Content.ReadAsStringAsync()).Sheet;

        sheet.All.MixedG.ShouldBe(396 * 1.15 + 100, 1e-6);
        sheet.All.HardenerG.ShouldBe((396 * 1.15 + 100) / 5, 1e-6);
        sheet.Pots.ShouldHaveSingleItem().EmptyTimeS.ShouldBe(1800 + 60 * 59.4 / 6.6, 0.1);
    }

    [Fact]
    public async Task PlanMix_RatioByVolumeWithoutDensities_NamesBothByTheirPath()
    {
        await using RunningService service = await RunningService.StartAsync(
            fake => fake.During = (_, _) => throw new InvalidOperationException("must not be reached"));
        var request = new PlanMixRequest { Plan = StraightStrip.With(plan => plan.Resin.MixRatio = new MixRatio { PartsByVolume = 40 }) };

        RpcException refusal = await Should.ThrowAsync<RpcException>(
            () => new MixService.MixServiceClient(service.Channel).PlanMixAsync(request).ResponseAsync);

        refusal.StatusCode.ShouldBe(StatusCode.InvalidArgument);
        FaultStatus.Read(refusal).Select(fault => fault.Path).ShouldBe(["resin.mixRatio.resinDensityKgPerM3", "resin.mixRatio.hardenerDensityKgPerM3"]);
    }

    [Fact]
    public async Task PlanMix_MisspeltKeyInJson_NamesTheNearest()
    {
        await using RunningService service = await RunningService.StartAsync();

        using HttpResponseMessage response = await service.Json.PostAsync(Route, StraightStrip.Request(StraightStrip.Json, ", \"plann\": 1"));

        ((int)response.StatusCode).ShouldBe(400);
        (await response.Content.ReadAsStringAsync()).ShouldContain("did you mean");
    }
}
