using System.Text.Json;
using Grpc.Core;
using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Json;
using InfusionSim.Protocol.V1;
using InfusionSim.Service.Tests.Fills;
using InfusionSim.Service.Tests.Hosting;

namespace InfusionSim.Service.Tests.Transport;

public sealed class SameFaultsTests
{
    private static async Task<(int Code, string Reason, (string Path, string Text)[] Faults)> PostAsync(RunningService service, HttpContent content)
    {
        using HttpResponseMessage response = await service.Json.PostAsync(new Uri("/v1/fills:predict", UriKind.Relative), content);
        string text = await response.Content.ReadAsStringAsync();
        JsonElement[] details = [.. JsonDocument.Parse(text).RootElement.GetProperty("details").EnumerateArray()];
        JsonElement request = details.First(detail => detail.GetProperty("@type").GetString()!.EndsWith("BadRequest", StringComparison.Ordinal));
        JsonElement info = details.First(detail => detail.GetProperty("@type").GetString()!.EndsWith("ErrorInfo", StringComparison.Ordinal));
        info.GetProperty("domain").GetString().ShouldBe("infusionsim.v1");
        return ((int)response.StatusCode, info.GetProperty("reason").GetString()!,
            [.. request.GetProperty("fieldViolations").EnumerateArray().Select(fault => (fault.GetProperty("field").GetString()!, fault.GetProperty("description").GetString()!))]);
    }

    public static TheoryData<string> Slips => [.. BadPlans.All.Keys];

    [Theory]
    [MemberData(nameof(Slips))]
    public async Task PredictFill_BadPlan_IsRefusedAlikeOnEveryTransport(string slip)
    {
        await using RunningService service = await RunningService.StartAsync(
            fake => fake.During = (_, _) => throw new InvalidOperationException("must not be reached"));
        InfusionPlan plan = StraightStrip.With(BadPlans.All[slip].Change);
        var request = new PredictFillRequest { Plan = plan };

        RpcException grpc = await Should.ThrowAsync<RpcException>(() => service.Grpc.PredictFillAsync(request).ResponseAsync);
        RpcException web = await Should.ThrowAsync<RpcException>(() => service.Web.PredictFillAsync(request).ResponseAsync);

        grpc.StatusCode.ShouldBe(StatusCode.InvalidArgument);
        web.StatusCode.ShouldBe(StatusCode.InvalidArgument);
        IReadOnlyList<Fault> faults = FaultStatus.Read(grpc);
        faults.Select(fault => fault.Path).ShouldContain(BadPlans.All[slip].Path);
        FaultStatus.Read(web).ShouldBe(faults);
        FaultStatus.ReasonOf(grpc).ShouldBe(BadPlans.All[slip].Reason);
        if (!BadPlans.All[slip].FitsJson) return;
        (int code, string reason, (string, string)[] json) = await PostAsync(service, StraightStrip.Request(MessageWriter.WriteGiven(plan)));
        code.ShouldBe(400);
        json.ShouldBe(faults.Select(fault => (fault.Path, fault.Text)));
        reason.ShouldBe(ErrorReasonReflection.Descriptor.EnumTypes[0].FindValueByNumber((int)BadPlans.All[slip].Reason).Name);
    }

    [Fact]
    public async Task PredictFill_MisspeltKeyAndBadNumberInJson_AnswersBoth()
    {
        await using RunningService service = await RunningService.StartAsync();
        string plan = StraightStrip.Json.Replace("mixToOpenMin", "mixToOpen").Replace("\"porosity\": 0.5", "\"porosity\": 1.2");

        (int code, string reason, (string Path, string Text)[] faults) = await PostAsync(service, StraightStrip.Request(plan, ", \"withFrontMapp\": true"));

        code.ShouldBe(400);
        reason.ShouldBe("ERROR_REASON_UNKNOWN_KEY");
        faults.Select(fault => fault.Path).ShouldBe(["resin.mixToOpen", "withFrontMapp", "preform.zones[0].porosity"]);
        faults[0].Text.ShouldBe("'mixToOpen' is not a key of resin; did you mean 'mixToOpenMin'?");
    }

    [Theory]
    [InlineData("{\"plan\": {\"resolution\": {\"cellMm\": NaN}}}")]
    [InlineData("not json")]
    [InlineData("")]
    [InlineData("[]")]
    [InlineData("{\"plan\": 5}")]
    [InlineData("{\"plan\": {\"resolution\": {\"cellMm\": 1e999}}}")]
    [InlineData("{}")]
    [InlineData("null")]
    public async Task PredictFill_JsonThatIsNoRequest_IsRefused(string body)
    {
        await using RunningService service = await RunningService.StartAsync();

        (int code, _, (string, string)[] faults) = await PostAsync(service, new StringContent(body));

        code.ShouldBe(400);
        faults.ShouldNotBeEmpty();
    }

    [Fact]
    public async Task PredictFill_ALotOfFaults_FitIntoTheAnswer()
    {
        await using RunningService service = await RunningService.StartAsync();
        InfusionPlan plan = StraightStrip.With(bad =>
        {
            for (int k = 0; k < 2000; k++) bad.Preform.Outline.Points.Add(new Point { XMm = double.NaN, YMm = -1e9 });
        });

        RpcException refusal = await Should.ThrowAsync<RpcException>(() => service.Grpc.PredictFillAsync(new PredictFillRequest { Plan = plan }).ResponseAsync);

        refusal.StatusCode.ShouldBe(StatusCode.InvalidArgument);
        FaultStatus.Read(refusal).Count.ShouldBe(FaultList.MostKept + 1);
    }
}
