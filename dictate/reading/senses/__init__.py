"""What each phrase of a sentence is here: the name of an item, or what it says of one."""
