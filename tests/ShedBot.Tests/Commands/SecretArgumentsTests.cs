using ShedBot.Commands;
using ShedBot.Tests.EndToEnd;
using ShedBot.Tests.Serving;

namespace ShedBot.Tests.Commands;

public sealed class SecretArgumentsTests
{
    [Theory]
    [InlineData("--token")]
    [InlineData("--TOKEN=abc")]
    [InlineData("--bot-token")]
    [InlineData("--discord:token=abc")]
    [InlineData(Secret.Token)]
    [InlineData("--data=" + Secret.Token)]
    public void Any_ASecret_IsFound(string argument) => Assert.True(SecretArguments.Any(["serve", argument]));

    [Theory]
    [InlineData("--data")]
    [InlineData("/run/secrets/token")]
    [InlineData("knowledge/clutch.facts.yaml")]
    [InlineData("2026-05-01T10:00:00Z")]
    public void Any_WhatIsNone_IsLeftAlone(string argument) => Assert.False(SecretArguments.Any(["serve", argument]));

    [Fact]
    public async Task Run_TokenOnTheCommandLine_IsRefusedAndNotRepeated()
    {
        var (code, output, errors) = await HostProcess.RunAsync("", "serve", "--token", Secret.Token);
        Assert.Equal(ExitCodes.InputHasErrors, code);
        Assert.Contains("does not belong on the command line", errors, StringComparison.Ordinal);
        Secret.AssertNotIn(output + errors);
    }
}
