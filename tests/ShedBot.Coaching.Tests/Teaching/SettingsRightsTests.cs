using System.Collections.Immutable;
using ShedBot.Coaching.Teaching;

namespace ShedBot.Coaching.Tests.Teaching;

/// <summary>What roles give, and what is said to those who may not.</summary>
public sealed class SettingsRightsTests
{
    private static readonly TeachingSettings Settings = TeachingSettings.New(School.Club) with
    {
        ProposeRoles = ImmutableSortedSet.Create(StringComparer.Ordinal, "11", "Writers"),
        PublishRoles = ImmutableSortedSet.Create(StringComparer.Ordinal, "22"),
    };

    [Theory]
    [InlineData(true, "", TeachingRights.All)]
    [InlineData(true, "11", TeachingRights.All)]
    [InlineData(false, "", TeachingRights.None)]
    [InlineData(false, "33", TeachingRights.None)]
    [InlineData(false, "1", TeachingRights.None)]
    [InlineData(false, "writers", TeachingRights.None)]
    [InlineData(false, "11", TeachingRights.Propose)]
    [InlineData(false, "33 Writers", TeachingRights.Propose)]
    [InlineData(false, "22", TeachingRights.Propose | TeachingRights.Publish)]
    [InlineData(false, "11 22", TeachingRights.Propose | TeachingRights.Publish)]
    [InlineData(false, "22 11", TeachingRights.Propose | TeachingRights.Publish)]
    public void Of_Roles_GiveJustWhatTheClubHasGivenThem(bool manages, string roles, TeachingRights rights)
    {
        var has = roles.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(rights, Settings.Of(manages, has));
        // Roles that can be gone through only once are none the less asked twice.
        var once = new Queue<string>(has);
        Assert.Equal(rights, Settings.Of(manages, Once(once)));
    }

    [Fact]
    public void New_AClubThatChoseNothing_GivesNobodyAnything()
    {
        var settings = TeachingSettings.New(School.Club);
        Assert.Equal((TeachingRights.None, TeachingRights.All), (settings.Of(false, ["", "11", "22"]), settings.Of(true, [])));
        Assert.False(settings.TwoPeople);
    }

    [Fact]
    public async Task Handle_WithoutTheRight_IsToldWhoseItIs()
    {
        using var school = PumpSchool.New();
        var eve = School.Member("eve", TeachingRights.None);
        Assert.Contains("tip of yours is always welcome", (await school.DoAsync(eve, new ShowRules())).Refused!.Say);
        Assert.Contains("Publishing, refusing and taking back", (await school.DoAsync(eve, new TakeBack(0, 0))).Refused!.Say);
        Assert.Contains("those who manage", (await school.DoAsync(eve, new ChooseTeaching(TwoPeople: true))).Refused!.Say);
        Assert.Equal("rights", (await school.DoAsync(eve, new TryOut("P1"))).Refused!.Code);
    }

    [Fact]
    public async Task Handle_ARequestThatIsNone_IsAFault()
    {
        using var school = PumpSchool.New();
        await Assert.ThrowsAsync<ArgumentOutOfRangeException>(() => school.DoAsync(School.Ada, new NoSuch()));
    }

    private static IEnumerable<string> Once(Queue<string> roles)
    {
        while (roles.TryDequeue(out var role)) yield return role;
    }

    private sealed record NoSuch() : TeachRequest(TeachingRights.None);
}
