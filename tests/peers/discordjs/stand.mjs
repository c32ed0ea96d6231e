// The stand-in's control side: what members do, what befalls the link, and what was seen of the client.
export class Stand {
  constructor(address) {
    this.address = address;
  }

  // What members do. Those that an answer is due to resolve with the client's first answer, so do not await them before giving it.
  say = (channel, person, text) => this.#post('say', { channel, person, text });
  press = (message, person, customId) => this.#due('press', { message, person, custom_id: customId });
  pick = (message, person, customId, values) => this.#due('pick', { message, person, custom_id: customId, values });
  command = (channel, person, name, options) => this.#due('command', { channel, person, name, options });
  submit = (interaction, values) => this.#due('submit', { interaction, values });

  // What goes wrong: with the next request that fits, or with the link at once.
  fault = (kind, route) => this.#post('fault', { kind, route });
  strike = kind => this.#post('strike', { kind });

  // What was seen.
  identifies = async () => (await this.#get('links')).filter(link => link.identify).length;
  // The session and the number the newest resume named; undefined before the first.
  lastResume = async () => {
    const resume = (await this.#get('links')).findLast(link => link.resume)?.resume;
    return resume && `${resume.session_id} ${resume.seq}`;
  };
  violations = async () => (await this.#get('violations')).map(violation => `${violation.where}: ${violation.what}`);
  statuses = async (method, route) => (await this.#get('log')).filter(entry => entry.method === method && entry.route === route).map(entry => entry.status);

  async message({ id, channelId }) {
    return (await this.#get(`messages?channel=${channelId}`)).find(message => message.id === id);
  }

  // The club the stand-in begins with: its first text channel, and a member who is neither its owner nor the bot.
  async club() {
    const world = await this.#get('world');
    const guild = world.guilds[0].id;
    const channel = world.channels.find(place => place.guild === guild && place.type === 0).id;
    return { guild, channel, person: world.people.filter(person => !person.bot).at(-1).id };
  }

  #due(name, said) {
    const answer = this.#post(name, said);
    // Whoever fails before awaiting it says why by itself.
    answer.catch(() => {});
    return answer;
  }

  #get = name => this.#call(`${this.address}/control/${name}`);
  #post = (name, said) => this.#call(`${this.address}/control/${name}`, { method: 'POST', body: JSON.stringify(said) });

  async #call(url, options) {
    const response = await fetch(url, options);
    const told = await response.json();
    if (!response.ok) throw new Error(`stand-in: ${told.error}`);
    return told;
  }
}
