Console.WriteLine("ShedBot");
