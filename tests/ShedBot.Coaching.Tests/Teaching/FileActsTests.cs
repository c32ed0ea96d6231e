using System.Text;
using ShedBot.Coaching.Teaching;

namespace ShedBot.Coaching.Tests.Teaching;

/// <summary>A club's rules out as a file and in again, and what is said of a file that cannot be used.</summary>
public sealed class FileActsTests
{
    [Fact]
    public async Task Upload_WhatWasDownloaded_ChangesNothing()
    {
        using var school = new School();
        await school.PublishAsync(School.Ada, "cause", Filled.Cause);
        Assert.Equal("nothing", (await UploadAsync(school, await DownloadAsync(school))).Refused?.Code);
    }

    [Fact]
    public async Task Upload_OneValueChangedByHand_IsAProposalOfThatChange()
    {
        using var school = new School();
        await school.PublishAsync(School.Ada, "cause", Filled.Cause);
        var answer = await UploadAsync(school, "# Ada's hand\n" + Changed(await DownloadAsync(school), "how common: uncommon", "how common: rare"));
        Assert.Equal("From a file: one change", answer.Proposal!.Title);
        Assert.Contains("rare", School.Text(answer.Card));
        Assert.Contains("handed in the file \"our-rules.yaml\" with one change", (await school.Shelf.AuditAsync(School.Club, long.MaxValue, 1, default))[0].What);
        var tried = await school.DoAsync(School.Ada, new TryOut(answer.Proposal.Id));
        var published = await school.DoAsync(School.Ada, new Publish(tried.Proposal!.Id, tried.Proposal.Version));
        Assert.True(published.Refused is null, School.Text(published.Card));
        Assert.Contains("how common: rare", await DownloadAsync(school));
    }

    [Fact]
    public async Task Upload_OfAnOlderEdition_KeepsWhatOthersPublishedSince()
    {
        using var school = new School();
        await school.PublishAsync(School.Ada, "cause", Filled.Cause);
        var older = await DownloadAsync(school);
        await school.PublishAsync(School.Bo, "strength", Filled.Commoner);
        var answer = await UploadAsync(school, Changed(older, "how common: uncommon", "how common: rare"));
        Assert.Equal("From a file: one change", answer.Proposal!.Title);
        var tried = await school.DoAsync(School.Ada, new TryOut(answer.Proposal.Id));
        await school.DoAsync(School.Ada, new Publish(tried.Proposal!.Id, tried.Proposal.Version));
        Assert.Single((await school.Shelf.FindEditionAsync(School.Club, 3, default))!.ReadLayer().Mends);
    }

    [Fact]
    public async Task Upload_OfAnEditionThatNeverWas_SaysWhatToDo()
    {
        using var school = new School();
        await school.PublishAsync(School.Ada, "cause", Filled.Cause);
        var answer = await UploadAsync(school, Changed(await DownloadAsync(school), "edition: 1", "edition: 7"));
        Assert.Equal("edition", answer.Refused?.Code);
        Assert.Contains("Download it anew", answer.Refused!.Say);
    }

    [Theory]
    [InlineData("faults: [")]
    [InlineData("faults:\n  - id: NOT AN ID\n")]
    [InlineData("a: &a [*a]\n")]
    [InlineData("rules: yes\n")]
    public async Task Upload_AFileThatCannotBeUsed_ChangesNothingAndNamesTheLine(string text)
    {
        using var school = new School();
        var answer = await UploadAsync(school, text);
        Assert.Equal("file", answer.Refused?.Code);
        Assert.Contains("Line ", School.Text(answer.Card));
        Assert.Null(answer.Proposal);
        Assert.Empty(await school.Shelf.ProposalsAsync(School.Club, ProposalState.Draft, 10, default));
    }

    [Fact]
    public async Task Upload_BytesThatAreNoText_AreRefused()
    {
        using var school = new School();
        Assert.NotNull((await school.DoAsync(School.Ada, new UploadRules("our-rules.yaml", [0xFF, 0xFE, 0x00, 0xC3, 0x28]))).Refused);
    }

    [Theory]
    [InlineData(0, true)]
    [InlineData(1, false)]
    public async Task Upload_AtTheLimitAndAByteAbove_IsReadOrTold(int above, bool read)
    {
        using var school = new School();
        var bytes = new byte[UploadRules.MostBytes + above];
        Array.Fill(bytes, (byte)'#');
        Assert.Equal(read, (await school.DoAsync(School.Ada, new UploadRules("our-rules.yaml", [.. bytes]))).Refused?.Code != "big");
    }

    private static string Changed(string text, string from, string to)
    {
        Assert.Contains(from, text);
        return text.Replace(from, to, StringComparison.Ordinal);
    }

    private static Task<TeachAnswer> UploadAsync(School school, string text) => school.DoAsync(School.Ada, new UploadRules("our-rules.yaml", [.. Encoding.UTF8.GetBytes(text)]));

    private static async Task<string> DownloadAsync(School school) =>
        Encoding.UTF8.GetString(Assert.Single((await school.DoAsync(School.Ada, new DownloadRules())).Files).Bytes.ToArray());
}
