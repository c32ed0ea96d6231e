using ShedBot.Discord.Running;
using ShedBot.Serving;
using ShedBot.Starting;

namespace ShedBot.Tests.Serving;

public sealed class InviteCommandTests
{
    private const string App = "10000000000000001";

    /// <summary>Bits by hand from the platform's published list of permissions: 10, 11, 14, 15, 16, 35, 36, 38; nothing else is asked for.</summary>
    [Fact]
    public void Run_AnApplication_PrintsTheLinkWithExactlyTheRightsItNames()
    {
        var output = new StringWriter();
        Assert.Equal(ExitCodes.Fine, InviteCommand.Run(App, output));
        var shown = output.ToString();
        var sum = new[] { 10, 11, 14, 15, 16, 35, 36, 38 }.Aggregate(0UL, (all, bit) => all | (1UL << bit));
        Assert.StartsWith($"https://discord.com/oauth2/authorize?client_id={App}&scope=bot+applications.commands&permissions={sum}", shown, StringComparison.Ordinal);
        Assert.Contains("Send Messages in Threads:", shown, StringComparison.Ordinal);
        Assert.Equal(8, AskedRights.Of(DiscordClubs.InviteLink(App)).Length);
        Assert.DoesNotContain("Administrator", shown, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void Of_ARightWithoutWords_IsNotHandedOut() =>
        Assert.Throws<InvalidOperationException>(() => AskedRights.Of(new Uri("https://chat.example/?permissions=8")));

    [Fact]
    public void Run_WhatIsNoId_IsRefused() => Assert.Throws<SettingRefusedException>(() => InviteCommand.Run("my bot", TextWriter.Null));
}
