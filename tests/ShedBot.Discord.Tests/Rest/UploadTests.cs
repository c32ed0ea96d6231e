using System.Text;
using ShedBot.Discord.Wire;
using static ShedBot.Discord.Tests.Rest.RestWorld;

namespace ShedBot.Discord.Tests.Rest;

/// <summary>Source: the platform's description, reference, "Uploading Files"; RFC 7578, section 4, for the form itself.</summary>
public sealed class UploadTests
{
    private static readonly CancellationToken None = CancellationToken.None;
    private static readonly Upload Picture = new("plan.png", "image/png", new byte[] { 0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A, 0x00, 0xFF });
    private static readonly Upload Text = new("notes.txt", "text/plain", Encoding.UTF8.GetBytes("two\r\nlines"));

    [Fact]
    public async Task Post_TwoFiles_EveryByteOfTheFormIsRight()
    {
        using var world = new RestWorld(_ => Answers.Ok());
        var body = new MessageBody("look", Attachments: [new("0", "plan.png", "The cover from above"), new("1", "notes.txt", null)]);

        await world.RunAsync(r => r.PostMessageAsync(Room, body, [Picture, Text], None));

        var seen = Assert.Single(world.Requests);
        Assert.StartsWith("multipart/form-data; boundary=\"", seen.MediaType, StringComparison.Ordinal);
        var boundary = seen.MediaType!["multipart/form-data; boundary=\"".Length..^1];
        var expected = Latin($$"""
            --{{boundary}}
            Content-Type: application/json
            Content-Disposition: form-data; name="payload_json"

            {"content":"look","attachments":[{"id":"0","filename":"plan.png","description":"The cover from above"},{"id":"1","filename":"notes.txt"}]}
            --{{boundary}}
            Content-Type: image/png
            Content-Disposition: form-data; name="files[0]"; filename="plan.png"


            """) + Encoding.Latin1.GetString(Picture.Bytes.Span) + Latin($$"""

            --{{boundary}}
            Content-Type: text/plain
            Content-Disposition: form-data; name="files[1]"; filename="notes.txt"

            two
            lines
            --{{boundary}}--

            """);
        Assert.Equal(expected, Encoding.Latin1.GetString(seen.Body));
    }

    [Fact]
    public async Task Post_FilesThatTheBodyDoesNotList_AreListed()
    {
        using var world = new RestWorld(_ => Answers.Ok());

        await world.RunAsync(r => r.PostMessageAsync(Room, new MessageBody("look"), [Picture], None));

        Assert.Contains("""{"content":"look","attachments":[{"id":"0","filename":"plan.png"}]}""", world.Requests[0].Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Answer_WithAFile_IsAFormToo()
    {
        using var world = new RestWorld(_ => Answers.Ok());

        await world.RunAsync(r => r.AnswerAsync(world.Interaction(), new InteractionAnswer(AnswerTypes.Message, new InteractionAnswerData("look")), [Picture], None));

        Assert.Contains("""{"type":4,"data":{"content":"look","attachments":[{"id":"0","filename":"plan.png"}]}}""", world.Requests[0].Text, StringComparison.Ordinal);
        Assert.Contains("name=\"files[0]\"; filename=\"plan.png\"", world.Requests[0].Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Edit_SentAgainAfterAFailure_HasTheSameParts()
    {
        var first = true;
        using var world = new RestWorld(_ =>
        {
            (var now, first) = (first, false);
            return now ? Answers.Refusal(503, 0) : Answers.Ok();
        });

        await world.RunAsync(r => r.EditMessageAsync(Room, Words, new MessageBody("look"), [Picture], None));

        Assert.Equal(2, world.Requests.Count);
        Assert.Equal(world.Requests[0].Body.Length, world.Requests[1].Body.Length);
        Assert.Contains("files[0]", world.Requests[1].Text, StringComparison.Ordinal);
    }

    private static string Latin(string text) => text.ReplaceLineEndings("\r\n");
}
