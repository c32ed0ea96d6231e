using ShedBot.Discord.Clubs;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Tests.Clubs;

/// <summary>Source: the platform's published description, topics/permissions: the order of resolution, and "implicit permissions".</summary>
public sealed class RightsCheckTests
{
    private const string ViewAndSend = "3072", View = "1024", Send = "2048", Everything = "8";

    private static readonly Snowflake Guild = new(10), Me = new(20), RoleA = new(30), RoleB = new(40);

    [Fact]
    public void Resolve_EveryoneAndRoles_AddsUp() =>
        Assert.Equal(Rights.ViewChannel | Rights.SendMessages, Resolve([RoleA], [new(Guild, Permissions: View), new(RoleA, Permissions: Send)]));

    [Fact]
    public void Resolve_RoleNotOurs_DoesNotCount() =>
        Assert.Equal(Rights.ViewChannel, Resolve([], [new(Guild, Permissions: View), new(RoleA, Permissions: Send)]));

    [Fact]
    public void Resolve_Administrator_MayAllWhateverTheChannelDenies() =>
        Assert.Empty(RightsCheck.Missing(Resolve([RoleA], [new(RoleA, Permissions: Everything)], new Overwrite(Guild, 0, Deny: View)), forum: false));

    [Fact]
    public void Resolve_EveryoneDeniedAndRoleAllowed_IsAllowed() => Assert.Equal(
        Rights.ViewChannel | Rights.SendMessages,
        Resolve([RoleA], [new(Guild, Permissions: ViewAndSend)], new Overwrite(Guild, 0, Deny: Send), new Overwrite(RoleA, 0, Allow: Send)));

    [Fact]
    public void Resolve_OneRoleDeniesAndAnotherAllows_IsAllowed() => Assert.Equal(
        Rights.ViewChannel | Rights.SendMessages,
        Resolve([RoleA, RoleB], [new(Guild, Permissions: ViewAndSend)], new Overwrite(RoleA, 0, Deny: Send), new Overwrite(RoleB, 0, Allow: Send)));

    [Fact]
    public void Resolve_MemberDenied_HasTheLastWord() => Assert.Equal(
        Rights.ViewChannel,
        Resolve([RoleA], [new(Guild, Permissions: ViewAndSend)], new Overwrite(RoleA, 0, Allow: Send), new Overwrite(Me, 1, Deny: Send)));

    [Fact]
    public void Resolve_WithoutView_NothingIsLeft() =>
        Assert.Equal(Rights.None, Resolve([], [new(Guild, Permissions: ViewAndSend)], new Overwrite(Guild, 0, Deny: View)));

    [Fact]
    public void Resolve_WhatIsSaidOfOthers_ChangesNothing() => Assert.Equal(
        Rights.ViewChannel | Rights.SendMessages,
        Resolve(
            [RoleA],
            [new(Guild, Permissions: ViewAndSend)],
            new Overwrite(RoleB, 0, Deny: Send),
            new Overwrite(new Snowflake(50), 1, Deny: Send),
            // Kinds are told apart by their type and not by whose number it is.
            new Overwrite(Guild, 1, Deny: Send),
            new Overwrite(RoleA, 1, Deny: Send),
            new Overwrite(Me, 0, Deny: Send)));

    [Fact]
    public void Resolve_EveryoneAllowedAndRoleDenied_IsDenied() => Assert.Equal(
        Rights.ViewChannel, Resolve([RoleA], [new(Guild, Permissions: View)], new Overwrite(Guild, 0, Allow: Send), new Overwrite(RoleA, 0, Deny: Send)));

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("many")]
    [InlineData("-1")]
    public void Read_NotANumber_IsNothing(string? bits) => Assert.Equal(Rights.None, RightsCheck.Read(bits));

    [Fact]
    public void Missing_InAForum_AsksForNoThreadsOfItsOwn() =>
        Assert.DoesNotContain(RightsCheck.Missing(Rights.None, forum: true), m => m.StartsWith("Create P", StringComparison.Ordinal));

    [Fact]
    public void Missing_OfSomeOrAll_NamesJustThose()
    {
        Assert.Equal(8, RightsCheck.Missing(Rights.None, forum: false).Length);
        Assert.Equal(6, RightsCheck.Missing(Rights.None, forum: true).Length);
        Assert.Empty(RightsCheck.Missing((Rights)RightsCheck.All, forum: false));
        var allBut = (Rights)RightsCheck.All & ~(Rights.CreatePublicThreads | Rights.EmbedLinks);
        Assert.Equal(["Create Public Threads", "Embed Links"], RightsCheck.Missing(allBut, forum: false).AsEnumerable());
        Assert.Equal(["Embed Links"], RightsCheck.Missing(allBut, forum: true).AsEnumerable());
    }

    /// <summary>309237730304 is what the platform's description gives for viewing, writing, threads and history (from its table of bits); files, embeds and private threads come on top.</summary>
    [Fact]
    public void All_IsTheSumOfThePublishedBits() => Assert.Equal(
        (1UL << 10) | (1UL << 11) | (1UL << 14) | (1UL << 15) | (1UL << 16) | (1UL << 35) | (1UL << 36) | (1UL << 38), RightsCheck.All);

    private static Rights Resolve(Snowflake[] mine, Role[] roles, params Overwrite[] overwrites) =>
        RightsCheck.Resolve(Guild, Me, mine, roles, overwrites);
}
