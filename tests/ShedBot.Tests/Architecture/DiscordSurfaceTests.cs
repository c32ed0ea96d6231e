using System.Reflection;
using ShedBot.Discord.Running;

namespace ShedBot.Tests.Architecture;

/// <summary>Above the chat project nothing of the platform's protocol is to be seen, so that another library could take its place.</summary>
public sealed class DiscordSurfaceTests
{
    private const string Shown = "ShedBot.Discord.Running";
    private static readonly Assembly Chat = typeof(DiscordClubs).Assembly;

    [Fact]
    public void PublicTypes_OfTheChat_AreThoseOfRunningOnly() =>
        Assert.Equal(
            ["ChatHealth", "ChatRefusedException", "DiscordClubs", "DiscordSettings"],
            Chat.GetExportedTypes().Select(t => t.Namespace == Shown ? t.Name : t.FullName!).Order(StringComparer.Ordinal));

    [Fact]
    public void PublicMembers_OfTheChat_NameNothingElseOfIt() =>
        Assert.DoesNotContain(Chat.GetExportedTypes().SelectMany(Named), t => t.Assembly == Chat && t.Namespace != Shown);

    [Fact]
    public void PublicMembers_HeldToANarrowerRule_AreFound() =>
        Assert.Contains(typeof(ChatHealth), Named(typeof(DiscordClubs)));

    /// <summary>Every type that whoever uses this one gets to see in it.</summary>
    private static IEnumerable<Type> Named(Type type)
    {
        const BindingFlags Seen = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;
        var methods = type.GetMembers(Seen).OfType<MethodBase>().Where(m => m.IsPublic || m.IsFamily || m.IsFamilyOrAssembly).ToList();
        var fields = type.GetFields(Seen).Where(f => f.IsPublic || f.IsFamily).Select(f => f.FieldType);
        var parameters = methods.SelectMany(m => m.GetParameters()).Select(p => p.ParameterType);
        var returned = methods.OfType<MethodInfo>().Select(m => m.ReturnType);
        Type?[] above = [type.BaseType, .. type.GetInterfaces()];
        return fields.Concat(parameters).Concat(returned).Concat(above.OfType<Type>()).SelectMany(Unfolded);
    }

    private static IEnumerable<Type> Unfolded(Type type) =>
        type.HasElementType ? Unfolded(type.GetElementType()!) : type.GetGenericArguments().SelectMany(Unfolded).Prepend(type);
}
