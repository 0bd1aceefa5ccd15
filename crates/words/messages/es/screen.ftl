# screen
