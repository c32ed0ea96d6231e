using System.Globalization;
using Moq;
using ShedBot.Coaching.Keeping;
using ShedBot.Coaching.Teaching;
using ShedBot.Discord.Clubs;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Tests.Clubs;

/// <summary>Who may do what with a club's rules. Bits of rights: the platform's published description, topics/permissions.</summary>
public sealed class TeachingDoorTests
{
    private static readonly Snowflake Club = new(100), Elsewhere = new(200), Person = new(7), Writers = new(31), Publishers = new(32), Other = new(33);

    private readonly Mock<ITeachingStore> store = new(MockBehavior.Strict);

    public TeachingDoorTests()
    {
        var settings = TeachingSettings.New(Names.Club(Club));
        Kept(settings with { ProposeRoles = settings.ProposeRoles.Add(Writers.ToString()), PublishRoles = settings.PublishRoles.Add(Publishers.ToString()) });
        Kept(TeachingSettings.New(Names.Club(Elsewhere)));
    }

    [Fact]
    public async Task Teacher_OutsideOfAClub_IsNobody() =>
        Assert.Null(await Teacher(new Interaction(new Snowflake(1), new Snowflake(2), InteractionTypes.Command, "t", User: new User(Person, "rider"))));

    [Fact]
    public async Task Teacher_MemberSaidToBeOfNoClub_IsNobody() => Assert.Null(await Teacher(Used(default, 1 << 3)));

    [Fact]
    public async Task Teacher_ClubWithoutAMember_IsNobody() =>
        Assert.Null(await Teacher(Used(Club, 1 << 3) with { Member = null, User = new User(Person, "rider") }));

    [Fact]
    public async Task Teacher_MemberWithoutAPerson_IsNobody() => Assert.Null(await Teacher(Used(Club, 1 << 3) with { Member = new GuildMember(Permissions: "8") }));

    [Theory]
    [InlineData(1 << 3)] // ADMINISTRATOR
    [InlineData(1 << 5)] // MANAGE_GUILD
    [InlineData((1 << 3) | (1 << 5) | 1)]
    public async Task Teacher_WhoManagesTheClub_MayDoAll(long permissions) => Assert.Equal(TeachingRights.All, (await Teacher(Used(Club, permissions)))!.Rights);

    [Theory]
    [InlineData(0)]
    [InlineData(1 << 1)] // KICK_MEMBERS
    [InlineData(1 << 2)] // BAN_MEMBERS
    [InlineData(1 << 4)] // MANAGE_CHANNELS
    [InlineData(1 << 13)] // MANAGE_MESSAGES
    [InlineData(1L << 28)] // MANAGE_ROLES
    [InlineData(1L << 34)] // MANAGE_THREADS
    [InlineData(~((1L << 3) | (1 << 5)) & long.MaxValue)] // all but the two
    public async Task Teacher_WithOtherRightsOnly_MayDoNothing(long permissions) =>
        Assert.Equal(TeachingRights.None, (await Teacher(Used(Club, permissions, Other)))!.Rights);

    [Theory]
    [InlineData(null)]
    [InlineData("")]
    [InlineData("everything")]
    [InlineData("-8")]
    [InlineData("0x8")]
    public async Task Teacher_RightsThatCannotBeRead_MayDoNothing(string? permissions) =>
        Assert.Equal(TeachingRights.None, (await Teacher(Used(Club, 0) with { Member = new GuildMember(new User(Person, "rider"), Permissions: permissions) }))!.Rights);

    [Fact]
    public async Task Teacher_ByARole_MayWhatTheClubChoseForIt()
    {
        Assert.Equal(TeachingRights.Propose, (await Teacher(Used(Club, 0, Other, Writers)))!.Rights);
        Assert.Equal(TeachingRights.Propose | TeachingRights.Publish, (await Teacher(Used(Club, 0, Publishers)))!.Rights);
        Assert.Equal(TeachingRights.Propose | TeachingRights.Publish, (await Teacher(Used(Club, 0, Writers, Publishers)))!.Rights);
    }

    [Fact]
    public async Task Teacher_RoleOfAnotherClub_CountsForNothing() =>
        Assert.Equal(TeachingRights.None, (await Teacher(Used(Elsewhere, 0, Writers, Publishers)))!.Rights);

    [Fact]
    public async Task Teacher_RoleTakenAwayInBetween_IsAskedAnew()
    {
        Assert.NotEqual(TeachingRights.None, (await Teacher(Used(Club, 0, Publishers)))!.Rights);
        Kept(TeachingSettings.New(Names.Club(Club)));
        Assert.Equal(TeachingRights.None, (await Teacher(Used(Club, 0, Publishers)))!.Rights);
    }

    [Fact]
    public async Task Teacher_OfAClub_IsThatClubsMemberByTheNameOfTheClub()
    {
        var teacher = (await Teacher(Used(Club, 0)))!;
        Assert.Equal((Names.Club(Club), Names.Club(Club).Member(Person.ToString()), "Old hand"), (teacher.Club, teacher.Who, teacher.Name));
        var nameless = (await Teacher(Used(Club, 0) with { Member = new GuildMember(new User(Person)) }))!;
        Assert.Equal("a member", nameless.Name);
    }

    private Task<Teacher?> Teacher(Interaction used) => new TeachingDoor(store.Object).TeacherAsync(used, CancellationToken.None);

    private void Kept(TeachingSettings settings) =>
        store.Setup(s => s.TeachingSettingsAsync(settings.Club, It.IsAny<CancellationToken>())).ReturnsAsync(settings);

    private static Interaction Used(Snowflake guild, long permissions, params Snowflake[] roles) => new(
        new Snowflake(1),
        new Snowflake(2),
        InteractionTypes.Command,
        "t",
        GuildId: guild,
        Member: new GuildMember(new User(Person, "rider"), "Old hand", roles, permissions.ToString(CultureInfo.InvariantCulture)));
}
