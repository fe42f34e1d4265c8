using System.Text;
using CsCheck;
using InfusionSim.Protocol.Json;
using InfusionSim.Protocol.Plans;
using InfusionSim.Protocol.V1;

namespace InfusionSim.Protocol.Tests.Plans;

/// <summary>Whatever is done to a plan file, reading and checking it ends with an answer.</summary>
public sealed class MutatedJsonTests
{
    private static readonly string[] Tokens =
    [
        "null", "true", "[]", "{}", "{", "}", "[", "]", ",", ":", "\"", "\\", "\\u0000", "\\ud83d", "-", "1e999", "-1e308", "1e-320", "NaN", "Infinity", "\"NaN\"", "0", "-0", "3.7e5",
        "\"xMm\"", "\"points\"", "\"preform\"", "\"zones\":[{}]", "\"porosity\":2", "\"area\":{\"points\":[]}", "//", "/*", "é", "\u0000", "🙂", "\n",
    ];

    private static readonly Gen<string> Mutated =
        Gen.Select(Gen.Int[0, StraightStrip.Json.Length], Gen.Int[0, 12], Gen.Int[0, Tokens.Length - 1]).Array[1, 6].Select(edits =>
        {
            var text = new StringBuilder(StraightStrip.Json);
            foreach ((int place, int removed, int token) in edits)
            {
                int at = Math.Min(place, text.Length);
                text.Remove(at, Math.Min(removed, text.Length - at)).Insert(at, Tokens[token]);
            }

            return text.ToString();
        });

    private static void ReadCheckAndMap(ReadOnlyMemory<byte> json)
    {
        JsonReading<InfusionPlan> reading = PlanJson.Read(json);
        PlanCheck check = PlanChecker.Check(reading.Message, reading.Faults);
        foreach (Faults.Fault fault in check.Faults)
        {
            fault.Text.ShouldNotBeNullOrWhiteSpace();
            fault.Text.Length.ShouldBeLessThan(1000);
            fault.Text.Any(letter => char.IsControl(letter)).ShouldBeFalse(fault.Text);
        }

        if (check.IsSound) PlanMapping.ToInputs(check).Panel.CellSize.ShouldBeGreaterThan(0);
    }

    [Fact]
    public void Read_MutatedText_EndsWithAnAnswer() => Mutated.Sample(text => ReadCheckAndMap(Encoding.UTF8.GetBytes(text)), iter: 3000);

    [Fact]
    public void Read_AnyBytes_EndsWithAnAnswer() => Gen.Byte.Array[0, 200].Sample(bytes => ReadCheckAndMap(bytes), iter: 3000);

    [Fact]
    public void Read_MutatedBytes_EndsWithAnAnswer() =>
        Gen.Select(Gen.Int[0, 1700], Gen.Byte).Array[1, 4].Sample(edits =>
        {
            byte[] bytes = Encoding.UTF8.GetBytes(StraightStrip.Json);
            foreach ((int place, byte value) in edits) bytes[place % bytes.Length] = value;
            ReadCheckAndMap(bytes);
        }, iter: 3000);

    [Fact]
    public void Write_PlanThatWasRead_ReadsBackTheSame() => Mutated.Sample(text =>
    {
        JsonReading<InfusionPlan> reading = PlanJson.Read(text);
        if (reading.Faults.Count == 0) PlanJson.Read(PlanJson.Write(reading.Message)).Message.ShouldBe(reading.Message);
    }, iter: 1000);
}
