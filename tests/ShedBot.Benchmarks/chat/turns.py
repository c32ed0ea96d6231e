"""A rider's talks with ShedBot in the stand-in's club: full turns by replies in the thread, and a press that takes no turn."""
import random
import time

TROUBLES = ["clutch wont let go when i pull it in, bike keeps pulling", "it slips uphill, engine revs and the bike does not go"]
# Not an answer, or the end of the talk before it has begun.
ASIDE = ["Why do you ask?", "What do you think?", "In my own words", "Back"]
DANGER = ["smell", "smoking", "cracked", "hurt", "Not yet"]


class Talks:
    def __init__(self, stand, seed):
        self.stand, self.chance = stand, random.Random(seed)
        self.thread = self.panel = None
        self.begun = 0

    def set_up(self):
        stand = self.stand
        stand.post("command", channel=stand.channel, person=stand.guild["owner"], name="club set-up", options={"help-channel": {"channel": stand.channel}})

    def begin(self):
        """Opens a case; its thread and first question are there afterwards."""
        stand, before = self.stand, set(self.stand.threads())
        stand.post("command", channel=stand.channel, person=stand.person, name="trouble", options={"words": TROUBLES[self.begun % len(TROUBLES)]})
        self.begun += 1
        for _ in range(300):
            for thread in set(stand.threads()) - before:
                self.thread, self.panel = thread, self._open(thread)
                if self.panel:
                    return
            time.sleep(0.1)
        raise RuntimeError("no thread with a question came")

    def turn(self):
        """One answer in words; how long until the next message of ShedBot was there, in ms."""
        if self.panel is None or not self._answers():
            self.begin()
        answers = self._answers()
        said = self.stand.post("exchange", channel=self.thread, person=self.stand.person, text=self.chance.choice(answers), reply_to=self.panel["id"])
        # What is said in several messages, or closes the case, ends a little later.
        time.sleep(0.05)
        self.panel = self._open(self.thread) if self.thread in self.stand.threads() else None
        return said["took_ms"]

    def why(self):
        """A press that shows something to the one who pressed and changes nothing; how long until it was answered, in ms."""
        if self.panel is None:
            self.begin()
        control, value = next((c, o["value"]) for c, o in self._choices() if o["label"] == ASIDE[0])
        told = self.stand.post("pick" if value else "press", message=self.panel["id"], person=self.stand.person, custom_id=control, values=[value])
        if told["message"] is None or told["answer_type"] != 4:
            raise RuntimeError(f"'why' was answered with type {told['answer_type']}")
        return told["took_ms"]

    def _open(self, thread):
        messages = [m for m in self.stand.get(f"messages?channel={thread}") if not m["deleted"] and m["controls"]]
        usable = [m for m in messages if any(not c["disabled"] and c["custom_id"] for c in m["controls"])]
        return usable[-1] if usable else None

    def _choices(self):
        for control in self.panel["controls"]:
            if control["disabled"] or not control["custom_id"]:
                continue
            for one in control["choices"] or [{"label": control["label"], "value": None}]:
                yield control["custom_id"], one

    def _answers(self):
        labels = [one["label"] for _, one in self._choices() if one["label"] not in ASIDE]
        return [label for label in labels if not any(word in label for word in DANGER)]
