using ShedBot.Discord.Gateway;
using ShedBot.Discord.Tests.Gateway.Rig;
using ShedBot.Discord.Wire;

namespace ShedBot.Discord.Tests.Gateway;

/// <summary>Source of what is expected: the platform's public description, "Gateway events" (receive events), and its objects for messages, interactions and threads.</summary>
public sealed class ReadingTests
{
    [Fact]
    public void Take_MessageOfSomebody_IsPeekedAt()
    {
        var bench = new Bench();
        bench.Take("MESSAGE_CREATE", 1, Samples.Chat);
        Assert.Equal(
            new MessagePeek(new(1478000000000000002), new(80), new(70), new(555), FromBot: false, MentionsUs: false), Assert.Single(bench.Peeks));
    }

    [Fact]
    public void Take_ReplyThatCallsUs_CountsAsAMentionAndIsReadWhole()
    {
        var bench = new Bench();
        bench.Take("MESSAGE_CREATE", 1, Samples.Reply);
        Assert.True(Assert.Single(bench.Peeks).MentionsUs);
        var message = Assert.IsType<MessageCame>(Assert.Single(bench.Taken)).Message;
        Assert.Equal("it \"drags\" é", message.Content);
        Assert.Equal((new Snowflake(201), new Snowflake(900)), (message.ReferencedMessage!.Id, message.ReferencedMessage.Author!.Id));
    }

    [Theory]
    [InlineData("""{"id":"1","channel_id":"2","author":{"id":"3","bot":true}}""", true)]
    [InlineData("""{"id":"1","channel_id":"2","webhook_id":"9","author":{"id":"9"}}""", true)]
    [InlineData("""{"id":"1","channel_id":"2","author":{"id":"3","bot":false},"webhook_id":null}""", false)]
    [InlineData("""{"id":"1","channel_id":"2","author":{"id":"3","bot":null}}""", false)]
    [InlineData("""{"id":"1","channel_id":"2","author":null,"mentions":null}""", false)]
    [InlineData("""{"author":{"bot":true,"id":"3","clan":{"id":"8","bot":false}},"channel_id":2,"id":1}""", true)]
    public void Take_WhoSpeaks_IsSeenAsBotOrNot(string message, bool bot)
    {
        var bench = new Bench();
        bench.Take("MESSAGE_CREATE", 1, message);
        Assert.Equal((new Snowflake(1), new Snowflake(2), bot), (bench.Peeks[0].Id, bench.Peeks[0].Channel, bench.Peeks[0].FromBot));
    }

    [Theory]
    [InlineData("""[{"id":"900"}]""", true)]
    [InlineData("""[{"username":"x","id":"900","member":{"roles":["1"]}}]""", true)]
    [InlineData("""[{"id":"9000"},{"id":"90"}]""", false)]
    [InlineData("""[null,"900",[{"id":"900"}],{"member":{"id":"900"}}]""", false)]
    public void Take_Mentions_AreOursOnlyByOurId(string mentions, bool ours)
    {
        var bench = new Bench { Wanted = _ => false };
        bench.Take("MESSAGE_CREATE", 1, $$"""{"id":"1","channel_id":"2","mentions":{{mentions}}}""");
        Assert.Equal(ours, bench.Peeks[0].MentionsUs);
    }

    [Fact]
    public void Take_MessageNobodyWants_IsNotHandedOnAndCountsAsDone()
    {
        var bench = new Bench { Wanted = _ => false };
        bench.Take("MESSAGE_CREATE", 5, Samples.Chat);
        Assert.Empty(bench.Taken);
        Assert.Equal(5, bench.Dispatcher.Session!.Progress.Safe);
    }

    [Fact]
    public void Take_Press_IsReadWithItsPlaceAndPerson()
    {
        var bench = new Bench();
        bench.Take("INTERACTION_CREATE", 1, Samples.Press);
        var press = Assert.IsType<InteractionCame>(Assert.Single(bench.Taken)).Interaction;
        Assert.Equal((3, "sb1:x", new Snowflake(555), new Snowflake(80)), (press.Type, press.Data!.CustomId, press.Who!.Id, press.ChannelId));
    }

    [Fact]
    public void Take_EveryKind_BecomesItsEventInOrder()
    {
        var bench = new Bench();
        for (var i = 0; i < Samples.All.Length; i++)
            bench.Take(Samples.All[i].Name, i + 1, Samples.All[i].Data);
        Assert.Equal(
            [
                typeof(MessageCame), typeof(MessageCame), typeof(InteractionCame), typeof(ThreadChanged), typeof(ThreadChanged), typeof(GuildThere),
                typeof(GuildGone), typeof(GuildGone), typeof(ThreadGone), typeof(ChannelGone), typeof(MessageGone), typeof(MessageGone),
            ],
            bench.Taken.Select(t => t.GetType()));
        // Only 'unavailable' makes it an outage; without it we were sent away.
        Assert.Equal([true, false], bench.Taken.OfType<GuildGone>().Select(g => g.Outage));
        Assert.Equal([1, 2], bench.Taken.OfType<MessageGone>().Select(g => g.Messages.Count));
        Assert.True(bench.Taken.OfType<ThreadChanged>().First().Thread.ThreadMetadata!.Archived);
        Assert.Equal(14, bench.Dispatcher.Session!.Progress.Safe);
    }

    [Theory]
    [InlineData("MESSAGE_CREATE", """{"id":"1","channel_id":"2","type":null,"flags":null,"author":null,"mentions":null,"components":null,"nonce":null}""")]
    [InlineData("INTERACTION_CREATE", """{"id":"1","application_id":null,"type":3,"token":"t","data":null,"member":null,"message":{"id":"2","type":null}}""")]
    [InlineData("THREAD_UPDATE", """{"id":"1","type":null,"name":null,"parent_id":null,"thread_metadata":{"archived":null,"locked":null}}""")]
    [InlineData("GUILD_CREATE", """{"id":"1","roles":null,"channels":[{"id":"2","type":null,"application_id":null}],"threads":null,"unavailable":null}""")]
    [InlineData("GUILD_DELETE", """{"id":"1","unavailable":null}""")]
    public void Take_NullWhereAValueBelongs_IsTakenAsMissing(string name, string data)
    {
        var bench = new Bench();
        bench.Take(name, 1, data);
        Assert.Single(bench.Taken);
    }

    [Theory]
    [InlineData("MESSAGE_CREATE", """{"content":"no ids"}""")]
    [InlineData("MESSAGE_CREATE", "null")]
    [InlineData("MESSAGE_CREATE", """{"id":"1","channel_id":"2","mentions":{"id":"900"},"author":7,"content":[1]}""")]
    [InlineData("INTERACTION_CREATE", """{"id":"1","token":null}""")]
    [InlineData("INTERACTION_CREATE", """{"id":{"a":1}}""")]
    [InlineData("THREAD_UPDATE", "[]")]
    [InlineData("GUILD_DELETE", "17")]
    [InlineData("MESSAGE_DELETE", "null")]
    public void Take_AnEventThatIsNotAsItShouldBe_IsPassedOverAndReadingGoesOn(string name, string data)
    {
        var bench = new Bench();
        bench.Take(name, 1, data);
        bench.Take("THREAD_DELETE", 2, """{"id":"81"}""");
        Assert.IsType<ThreadGone>(Assert.Single(bench.Taken));
        Assert.Equal(2, bench.Dispatcher.Session!.Progress.Safe);
    }

    [Fact]
    public async Task ReadAsync_UnknownOperationsAndShapes_ArePassedOver()
    {
        var bench = new Bench();
        bench.Socket.Hello();
        foreach (var odd in (string[])["""{"op":99,"d":{}}""", "{}", "[]", "17", "null", """{"op":"0","t":7,"s":"x","d":null}""", """{"op":0,"t":null,"s":null}"""])
            bench.Socket.Say(odd);
        bench.Socket.Event("THREAD_DELETE", 3, """{"id":"81"}""");
        bench.Socket.CloseWith(4000);
        Assert.Equal("code-4000", (await bench.ReadAsync()).Reason);
        Assert.Single(bench.Taken);
    }

    [Theory]
    [InlineData("{\"op\":0,")]
    [InlineData("")]
    [InlineData("{\"op\":11}{\"op\":11}")]
    [InlineData("{\"op\":0,\"t\":\"READY\",\"s\":1,\"d\":{\"user\":{\"id\":\"900\"}}}")] // A session without its id is none.
    public async Task ReadAsync_ABrokenFrame_ClosesSoThatTheSessionStays(string frame)
    {
        var bench = new Bench();
        bench.Socket.Hello();
        bench.Socket.Say(frame);
        var ending = await bench.ReadAsync();
        Assert.Equal((Next.Resume, "broken-frame"), (ending.Next, ending.Reason));
        Assert.Equal(4000, bench.Socket.LeftWith);
    }

    [Fact]
    public async Task ReadAsync_ABinaryFrame_IsReadLikeAText()
    {
        var bench = new Bench();
        bench.Socket.Hello();
        bench.Socket.Say(System.Text.Encoding.UTF8.GetBytes(Samples.Frame(8, 2)), type: System.Net.WebSockets.WebSocketMessageType.Binary);
        bench.Socket.CloseWith(4000);
        await bench.ReadAsync();
        Assert.IsType<ThreadGone>(Assert.Single(bench.Taken));
    }

    [Fact]
    public async Task RunAsync_ASinkThatThrows_DoesNotStopTheReading()
    {
        await using var rig = new GatewayRig { DoneAtOnce = false };
        var socket = await rig.BeginAsync();
        rig.OnTake = _ => throw new InvalidOperationException("a mistake of the taker");
        socket.Event("THREAD_DELETE", 2, """{"id":"81"}""");
        await rig.TookAsync<ThreadGone>();
        rig.OnTake = null;
        socket.Event("THREAD_DELETE", 3, """{"id":"82"}""");
        await rig.TookAsync<ThreadGone>(2);
        Assert.Null(socket.LeftWith);
    }

    [Fact]
    public void Take_BeforeAnySession_HandsNothingOn()
    {
        var bench = new Bench(session: false);
        bench.Take("THREAD_DELETE", 3, """{"id":"81"}""");
        bench.Take("RESUMED", 4, "{}");
        Assert.Empty(bench.Taken);
    }

    [Fact]
    public void Take_MessagesNobodyWants_CostNoMemory()
    {
        var bench = new Bench { Wanted = _ => false };
        var frame = System.Text.Encoding.UTF8.GetBytes(Samples.Frame(0, 7));
        bench.Peeks.EnsureCapacity(11_000);
        Pass(1000);
        // The least of several: another test may be listening to the same figures meanwhile, and its listening is done on this thread.
        var each = Enumerable.Range(0, 10).Min(_ =>
        {
            var before = GC.GetAllocatedBytesForCurrentThread();
            Pass(1000);
            return (GC.GetAllocatedBytesForCurrentThread() - before) / 1000.0;
        });
        Assert.True(each < 16, $"{each} bytes for each message that nobody asked about; none are needed.");

        void Pass(int times)
        {
            for (var i = 0; i < times; i++)
                bench.Dispatcher.Take(Envelope.Read(frame, bench.Dispatcher.Me));
        }
    }
}
