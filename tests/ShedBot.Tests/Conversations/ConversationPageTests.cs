namespace ShedBot.Tests.Conversations;

public sealed class ConversationPageTests
{
    private const string Page = "# Two\n\n```text\nHello\n\n> it drags\n\n>\n```\nbetween\n```text\n> bye\n```\nend\n";

    [Fact]
    public void Read_APage_FindsItsConversations() =>
        Assert.Equal(["Hello\n\n> it drags\n\n>\n", "> bye\n"], ConversationPage.Read(Page).Conversations.AsEnumerable());

    [Fact]
    public void With_TheSameConversations_IsTheSamePage()
    {
        var page = ConversationPage.Read(Page);
        Assert.Equal(Page, page.With(page.Conversations));
    }

    [Fact]
    public void RiderLines_MarkedLines_AreWhatWasTyped() =>
        Assert.Equal(["it drags", ""], ConversationPage.RiderLines(ConversationPage.Read(Page).Conversations[0]));
}
