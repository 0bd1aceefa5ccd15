# marking
