package slack

// Workspace is the id of the workspace that the bot token is for, empty until
// Slack told, which Check and Run ask for.
func (a *Adapter) Workspace() string {
	if s := a.self.Load(); s != nil {
		return s.team
	}
	return ""
}
