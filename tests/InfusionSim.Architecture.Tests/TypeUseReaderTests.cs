using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using InfusionSim.Architecture.Tests.Metadata;

namespace InfusionSim.Architecture.Tests;

/// <summary>The reader that the arrows rest on must itself see what it claims to see.</summary>
public sealed class TypeUseReaderTests
{
    private static readonly IReadOnlyList<TypeUse> OfThisAssembly = TypeUseReader.Read(typeof(TypeUseReaderTests).Assembly.Location);

    [Theory]
    [InlineData(nameof(Sample.InSignature), nameof(StringBuilder))]
    [InlineData(nameof(Sample.InBody), nameof(CultureInfo))]
    [InlineData(nameof(Sample.InBody), nameof(InvalidTimeZoneException))]
    [InlineData(nameof(Sample.InGeneric), nameof(Uri))]
    [InlineData(nameof(Sample.InAttribute), nameof(ObsoleteAttribute))]
    public void Reader_TypeUsedInOnePlaceOnly_IsSeen(string member, string type) =>
        OfThisAssembly.ShouldContain(use => use.User == nameof(Sample) && use.Member == member && use.Type == type);

    [Fact]
    public void Reader_TypeUsedInLambdaOnly_IsSeenUnderTheOuterType() =>
        OfThisAssembly.ShouldContain(use => use.User == nameof(Sample) && use.Type == nameof(Regex));

    [Fact]
    public void Reader_TypeUsedInIteratorOnly_IsSeenUnderTheOuterType() =>
        OfThisAssembly.ShouldContain(use => use.User == nameof(Sample) && use.Type == nameof(Random));

    [Fact]
    public void Reader_TypeNotUsed_IsNotSeen() =>
        OfThisAssembly.ShouldNotContain(use => use.User == nameof(Sample) && use.Type == nameof(HttpClient));
}
