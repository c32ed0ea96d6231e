using ShedBot.Coaching.Learning.Reports;
using ShedBot.Coaching.Tests.Teaching;

namespace ShedBot.Coaching.Tests.Learning.Reports;

/// <summary>All people, places and numbers are made up; the numbers are of ranges that are kept free for stories.</summary>
public class DiscreetTests
{
    private static readonly Discreet Discreet = new(School.Shipped.Knowledge!);

    [Theory]
    [InlineData("hey <@123456789012345678> my clutch grumbles", "hey [somebody] my clutch grumbles")]
    [InlineData("@everyone it grumbles", "[somebody] it grumbles")]
    [InlineData("as said in <#123456789012345678> it grumbles", "as said in [a place] it grumbles")]
    [InlineData("it grumbles <:sad:123456789012345678> a lot", "it grumbles a lot")]
    [InlineData("call me on 01632 960 123, it grumbles", "call me on [a number], it grumbles")]
    [InlineData("ring +44 (0)1632-960123 please", "ring [a number] please")]
    [InlineData("write to ann.b@example.org or www.example.org/a?b=1 now", "write to [an address] or [an address] now")]
    [InlineData("it is at 12 Mill Lane, come and see", "it is at [a place], come and see")]
    [InlineData("I live in Ahornstraße 7 and it grumbles", "I live in [a place] and it grumbles")]
    [InlineData("post it to ZZ9 9ZZ", "post it to [a place]")]
    [InlineData("my mate Zebedee fitted it", "my mate [somebody] fitted it")]
    [InlineData("Zebedee says it grumbles", "[somebody] says it grumbles")]
    [InlineData("my name is zebedee and it grumbles", "my name is [somebody] and it grumbles")]
    [InlineData("it grumbles. cheers zebedee", "it grumbles. cheers [somebody]")]
    [InlineData("two\nlines\u202e", "two lines")]
    public void Shown_WhatIsPrivate_IsTakenOut(string words, string shown) => Assert.Equal(shown, Discreet.Shown(words));

    /// <summary>What riders write of machines stays as it is.</summary>
    [Theory]
    [InlineData("the gap is 0.25 mm at 3500 rpm, since Monday")]
    [InlineData("M6 5mm bolt and a 6203 bearing, 10000 km")]
    [InlineData("after 3 miles down the road it grumbles")]
    [InlineData("Gear Oil Everywhere On The Clutch")]
    [InlineData("ITS GRUMBLING AGAIN. Why? It says nothing")]
    [InlineData("when the Clutch is in, I hear the Lever creak")]
    public void Shown_WhatIsOfTheMachine_Stays(string words) => Assert.Equal(words, Discreet.Shown(words));

    [Theory]
    [InlineData("it grumbles like a bear, call me on 01632 960 123!!", "it grumbles like a bear")]
    [InlineData("my mate Zebedee fitted it and it grumbles", "my mate fitted it and it grumbles")]
    [InlineData("it grumbles. A lot!", "it grumbles. A lot")]
    public void Bare_LeavesWhatCanBeTaught(string words, string taught) => Assert.Equal(taught, Discreet.Bare(words));

    [Theory]
    [InlineData("<@123456789012345678> 01632 960 123")]
    [InlineData("@someone")]
    [InlineData("")]
    public void Bare_WithNothingLeft_IsEmpty(string words) => Assert.Equal("", Discreet.Bare(words));
}
