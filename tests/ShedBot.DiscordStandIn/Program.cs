Console.WriteLine("A loopback stand-in for the chat platform; not started.");
