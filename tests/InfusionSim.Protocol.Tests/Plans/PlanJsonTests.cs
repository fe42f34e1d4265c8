using InfusionSim.Protocol.Faults;
using InfusionSim.Protocol.Json;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Tests.Plans;

public sealed class PlanJsonTests
{
    [Fact]
    public void Read_ExamplePlan_KeepsEveryNumber()
    {
        JsonReading<InfusionPlan> reading = PlanJson.Read(StraightStrip.Json);

        reading.Faults.ShouldBeEmpty();
        reading.Message.Title.ShouldBe("Straight strip");
        reading.Message.Preform.Outline.Points.Count.ShouldBe(4);
        reading.Message.Preform.Outline.Points[2].XMm.ShouldBe(600);
        reading.Message.Preform.Zones[0].Permeability.K3M2.ShouldBe(1e-12);
        reading.Message.Vents[0].Path.Points[1].YMm.ShouldBe(400);
        reading.Message.Goals.MostResinOutCm3.ShouldBe(200);
        reading.Message.Resolution.CellMm.ShouldBe(5);
    }

    [Fact]
    public void Write_ExamplePlan_ReadsBackTheSame()
    {
        InfusionPlan plan = StraightStrip.Plan();

        PlanJson.Read(PlanJson.Write(plan)).Message.ShouldBe(plan);
        PlanJson.Write(plan).ShouldContain("\n  \"preform\"");
    }

    [Fact]
    public void Read_MisspeltKeys_NamesEachWithThePathAndTheNearestKey()
    {
        string json = StraightStrip.Json.Replace("\"porosity\"", "\"porostiy\"").Replace("\"viscosityPaS\"", "\"viscosity\"").Replace("\"gaps\"", "\"weather\"");

        IReadOnlyList<Fault> faults = PlanJson.Read(json).Faults;

        faults.Select(fault => fault.Path).ShouldBe(["preform.zones[0].porostiy", "weather", "resin.viscosity"]);
        faults[0].Text.ShouldBe("'porostiy' is not a key of preform.zones[0]; did you mean 'porosity'?");
        faults[1].Text.ShouldContain("known here are title, preform, flowMeshes");
        faults[2].Text.ShouldContain("did you mean 'viscosityPaS'?");
        faults.ShouldAllBe(fault => fault.Reason == ErrorReason.UnknownKey);
    }

    [Theory]
    [InlineData("\"cellMm\": 5", "\"cellMm\": \"5\"", "resolution.cellMm", "without quotes")]
    [InlineData("\"cellMm\": 5", "\"cellMm\": \"NaN\"", "resolution.cellMm", "plain number")]
    [InlineData("\"cellMm\": 5", "\"cellMm\": \"Infinity\"", "resolution.cellMm", "plain number")]
    [InlineData("\"cellMm\": 5", "\"cellMm\": 1e999", "resolution.cellMm", "finite")]
    [InlineData("\"cellMm\": 5", "\"cellMm\": -1e999", "resolution.cellMm", "finite")]
    [InlineData("\"cellMm\": 5", "\"cellMm\": true", "resolution.cellMm", "must be a number; it is true")]
    [InlineData("\"cellMm\": 5", "\"cellMm\": [5]", "resolution.cellMm", "must be a number; it is a list")]
    [InlineData("\"cellMm\": 5", "\"cellMm\": 5, \"cellMm\": 6", "resolution.cellMm", "given twice")]
    [InlineData("\"cellMm\": 5", "\"cellMm\": 5, \"cell_mm\": 6", "resolution.cellMm", "given twice")]
    [InlineData("\"gaps\": []", "\"gaps\": {}", "gaps", "must be a list [ … ]; it is an object")]
    [InlineData("{ \"cellMm\": 5 }", "5", "resolution", "must be an object { … }; it is the number 5")]
    [InlineData("\"title\": \"Straight strip\"", "\"title\": 7", "title", "text in quotes")]
    [InlineData("{\"xMm\":300,\"yMm\":200}", "null", "timingMarks[0].at", "")]
    [InlineData("\"contactWidthMm\": 12 } ],\n  \"timing", "\"kind\": \"VENT_KIND_TUB\" } ],\n  \"timing", "vents[0].kind", "Did you mean VENT_KIND_TUBE?")]
    public void Read_WrongValue_NamesThePathAndWhatToDo(string from, string to, string path, string words)
    {
        string json = StraightStrip.Json.ReplaceLineEndings("\n");
        json.ShouldContain(from);

        JsonReading<InfusionPlan> reading = PlanJson.Read(json.Replace(from, to));
        IReadOnlyList<Fault> faults = PlanChecker.Check(reading.Message, reading.Faults).Faults;

        faults.Count.ShouldBe(1, string.Join("\n", faults));
        faults[0].Path.ShouldBe(path);
        faults[0].Text.ShouldContain(words);
    }

    [Theory]
    [InlineData("{\n  \"title\": \"a\",\n  \"gaps\": [,]\n}", "line 3, column 12")]
    [InlineData("{\n  \"title\": \"ä\" \"b\"\n}", "line 2, column 16")]
    [InlineData("{\"resolution\": {\"cellMm\": NaN}}", "NaN and Infinity are not numbers")]
    [InlineData("{\"gaps\": [],}", "line 1, column 13")]
    [InlineData("{\"title\": \"a\",", "it ends in the middle: brackets are still open.")]
    [InlineData("{\"title\": \"a", "it ends in the middle: brackets are still open.")]
    [InlineData("{\"resolution\": {\"cellMm\": 5 ", "it ends in the middle: brackets are still open. Was the file cut off?")]
    [InlineData("this is no plan", "'this is no plan' stands where a number, true, false or a text in quotes must stand.")]
    [InlineData("", "empty")]
    [InlineData("  \n", "empty")]
    [InlineData("[]", "must be a JSON object")]
    [InlineData("{\"title\": \"\\ud800\"}", "half a letter")]
    public void Read_NotJson_SaysWhere(string json, string words)
    {
        IReadOnlyList<Fault> faults = PlanJson.Read(json).Faults;

        faults.Count.ShouldBe(1);
        faults[0].Text.ShouldContain(words);
        faults[0].Reason.ShouldBe(ErrorReason.NotJson);
    }

    [Theory]
    [InlineData("\"viscosityPaS\": 0.2", "\"viscosityPaS\": NaN", "resin.viscosityPaS")]
    [InlineData("{\"xMm\":300,\"yMm\":200}", "{\"xMm\":300,\"yMm\":-Infinity}", "timingMarks[0].at.yMm")]
    [InlineData("\"gaps\": []", "\"gaps\": [{}, {,]", "gaps[1]")]
    public void Check_AfterASyntaxError_AnswersThatOneOnly(string from, string to, string path)
    {
        StraightStrip.Json.ShouldContain(from);
        JsonReading<InfusionPlan> reading = PlanJson.Read(StraightStrip.Json.Replace(from, to));

        Fault fault = PlanChecker.Check(reading.Message, reading.Faults).Faults.ShouldHaveSingleItem();

        fault.Path.ShouldBe(path);
        fault.Text.ShouldContain($", in {path}: ");
        fault.Text.ShouldContain(" column ");
        fault.Reason.ShouldBe(ErrorReason.NotJson);
    }

    [Fact]
    public void Read_BrokenUtf8_IsRefused()
    {
        byte[] bytes = [.. "{\"title\": \""u8, 0xC3, 0x28, .. "\"}"u8];

        PlanJson.Read(bytes).Faults.ShouldHaveSingleItem().Text.ShouldContain("byte 12");
    }

    [Fact]
    public void Read_ByteOrderMark_IsPassedOver() =>
        PlanJson.Read((byte[])[0xEF, 0xBB, 0xBF, .. "{\"title\": \"a\"}"u8]).Message.Title.ShouldBe("a");

    [Fact]
    public void Read_DeepNesting_IsRefused() =>
        PlanJson.Read(string.Concat(Enumerable.Repeat("{\"preform\":", 100_000))).Faults.ShouldHaveSingleItem().Text.ShouldContain("deep");

    [Fact]
    public void Read_TooLong_IsRefused()
    {
        IReadOnlyList<Fault> faults = PlanJson.Read(new byte[MessageReader.MostBytes + 1]).Faults;

        faults.ShouldHaveSingleItem().Reason.ShouldBe(ErrorReason.TooLarge);
    }

    [Fact]
    public void Read_ManyUnknownKeys_KeepsTheAnswerShort()
    {
        string json = "{" + string.Join(",", Enumerable.Range(0, 5000).Select(k => $"\"key{k}\": {k}")) + "}";

        IReadOnlyList<Fault> faults = PlanJson.Read(json).Faults;

        faults.Count.ShouldBe(FaultList.MostKept + 1);
        faults[^1].Text.ShouldContain($"{5000 - FaultList.MostKept} more faults");
    }
}
