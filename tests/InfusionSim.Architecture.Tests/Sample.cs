using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace InfusionSim.Architecture.Tests;

/// <summary>Uses one type in each kind of place, for the test of the reader.</summary>
internal static class Sample
{
    public static readonly Func<string, bool> InLambda = text => Regex.IsMatch(text, "^[a-z]+$");

    public static int InSignature(StringBuilder? text) => text is null ? 0 : 1;

    public static string InBody(int number)
    {
        try
        {
            return number.ToString(CultureInfo.InvariantCulture);
        }
        catch (InvalidTimeZoneException)
        {
            return "";
        }
    }

    public static int InGeneric() => Array.Empty<Uri>().Length;

    [Obsolete("Only the attribute matters here.")]
    public static int InAttribute() => 0;

    public static IEnumerable<int> InIterator()
    {
        Random random = new(20260131);
        while (true) yield return random.Next();
    }
}
