using System.Xml.Linq;

namespace InfusionSim.Architecture.Tests.Metadata;

/// <summary>The documentation file that the compiler wrote beside an assembly.</summary>
internal sealed class Documentation
{
    private readonly Dictionary<string, XElement> members;

    public Documentation(string project) =>
        members = XDocument.Load(Path.ChangeExtension(House.PathOf(project), ".xml")).Descendants("member")
            .GroupBy(one => one.Attribute("name")!.Value)
            .ToDictionary(group => group.Key, group => group.First());

    /// <summary>What is said of a member as a whole: summary, returns and value.</summary>
    public string OfMember(string name) => members.TryGetValue(name, out XElement? member)
        ? string.Join(' ', member.Elements().Where(one => one.Name.LocalName is "summary" or "returns" or "value").Select(one => one.Value))
        : "";

    /// <summary>What is said of a parameter.</summary>
    public string OfParameter(string name, string parameter) => members.TryGetValue(name, out XElement? member)
        ? string.Join(' ', member.Elements("param").Where(one => one.Attribute("name")?.Value == parameter).Select(one => one.Value))
        : "";
}
