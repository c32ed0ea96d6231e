using ShedBot.Knowledge.Layers;

namespace ShedBot.Knowledge.Tests.Layers;

public class LayerTests
{
    [Fact]
    public void Write_WhatWasWritten_ReadsToTheSameLayer()
    {
        var text = LampClub.Layer.Write();

        Assert.Equal(LampClub.Layer, LampClub.Of(text));
        Assert.Equal(text, LampClub.Of(text).Write());
        Assert.Equal(3, LampClub.Of(text).Edition);
    }

    [Fact]
    public void Load_EverySortOfChange_IsInTheKnowledge()
    {
        var load = LayeredRules.Load(LampClub.Base, LampClub.Layer);

        Assert.Equal("", string.Join('\n', load.Problems.Where(p => p.Severity == Problems.Severity.Error)));
        Assert.Equal(["bulb-loose", "switch-worn", "wire-off"], load.Knowledge!.Faults.Keys);
    }
}
