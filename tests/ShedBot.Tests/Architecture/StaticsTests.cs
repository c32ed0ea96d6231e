using System.Collections;
using System.Reflection;
using ShedBot.Coaching.Cases;
using ShedBot.Commands;
using ShedBot.Discord.Running;
using ShedBot.Knowledge;
using ShedBot.Reasoning.Modelling;
using ShedBot.Storage;
using ShedBot.Trade.Keys;

namespace ShedBot.Tests.Architecture;

/// <summary>Nobody can change what everybody shares.</summary>
public sealed class StaticsTests
{
    [Theory]
    [InlineData(typeof(DiagnosticModel))]
    [InlineData(typeof(WoodruffKey))]
    [InlineData(typeof(KnowledgeBase))]
    [InlineData(typeof(Case))]
    [InlineData(typeof(LiteShedStore))]
    [InlineData(typeof(DiscordClubs))]
    [InlineData(typeof(ShedCommand))]
    public void PublicStatics_OfEachProject_CannotBeChanged(Type ofProject) =>
        Assert.Empty(ofProject.Assembly.GetTypes().Where(t => t.IsVisible).SelectMany(Changeable));

    [Fact]
    public void PublicStatics_AChangeableOne_IsFound() =>
        Assert.Equal(["List", "Number", "Settable"], Changeable(typeof(Bad)).Select(m => m.Name).Order());

    private static IEnumerable<MemberInfo> Changeable(Type type)
    {
        const BindingFlags Shared = BindingFlags.Public | BindingFlags.Static | BindingFlags.DeclaredOnly;
        var fields = type.GetFields(Shared).Where(f => !f.IsLiteral && (!f.IsInitOnly || Holds(f.FieldType)));
        var properties = type.GetProperties(Shared).Where(p => p.SetMethod is { IsPublic: true } || Holds(p.PropertyType));
        return type.IsEnum ? [] : fields.Cast<MemberInfo>().Concat(properties);
    }

    /// <summary>Arrays, lists and dictionaries can be changed by whoever holds them.</summary>
    private static bool Holds(Type type) => type.IsArray
        || (typeof(IList).IsAssignableFrom(type) || typeof(IDictionary).IsAssignableFrom(type))
            && type.Namespace is not ("System.Collections.Immutable" or "System.Collections.Frozen");

    internal static class Bad
    {
        public static int Number = 1;
        public static readonly List<int> List = [];

        public static int Settable { get; set; }

        public static int Fine => Number;
    }
}
